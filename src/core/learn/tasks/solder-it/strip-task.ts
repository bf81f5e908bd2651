/** How much of a core is bare above its cup, and whether it can reach the next pin: judged by the floor of making. */
import { CUP_METRES, PIN_GAP_METRES, PIN_METRES, bareEnd, sayBareEnd } from '../../../making/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import { inRows, met, whichText } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Bare ends that are told, millimetres: none so near a bound that a ruler would be needed. */
const BARE_MILLIMETRES = [1.5, 3.6, 5, 3, 1.8, 4.6, 3.4, 3, 5.5, 1.2, 4, 4.8] as const;

type Fit = ReturnType<typeof bareEnd>['fit'];

const FIT_TEXTS: Readonly<Record<Fit, string>> = {
  'too short': 'Only the rim holds it: strip more of it',
  right: 'All the bare wire is held: leave it so',
  'too long': 'Some stays bare, and touches nothing',
  'can touch': 'Some stays bare, and can touch a pin',
};

const millimetres = (metres: number): number => Number((metres * 1e3).toFixed(2));

/** What a bare end does in the cup of a DIN pin. From level 2 on the room to the next pin has to be worked out. */
export function stripLength(level: Level, chance: Chance): Drawn {
  const bare = chance.turn(BARE_MILLIMETRES);
  const judged = bareEnd(bare * 1e-3);
  const pitch = PIN_GAP_METRES + PIN_METRES;
  const depth = ['depth of the cup', `${millimetres(CUP_METRES)} mm`] as const;
  const over = Math.max(0, bare * 1e-3 - CUP_METRES);
  return {
    ask: `A core for the cup of a DIN pin is stripped by ${bare} mm, and pushed in to the bottom. How does it fit?`,
    shows: inRows(
      level < 2
        ? [depth, ['room between two pins', `${millimetres(PIN_GAP_METRES)} mm`]]
        : [
            depth,
            ['from the middle of a pin to the middle of the next', `${millimetres(pitch)} mm`],
            ['thickness of a pin', `${millimetres(PIN_METRES)} mm`],
          ],
    ),
    ...whichText(
      FIT_TEXTS,
      judged.fit,
      (fit) => met(SAID_TO_FIT, mistakenFit(fit, judged.fit, level >= 2 && over < pitch)),
      chance,
    ),
    hints: [
      'Strip as much as the cup is deep.',
      'What is longer than the cup is deep stands bare above it, and can bend to any side.',
      'Compare what stands bare with the room to the next pin: from middle to middle, less one pin.',
    ],
    caution: SOLDER_CAUTION,
    steps: [
      `${bare} mm bare, ${millimetres(CUP_METRES)} mm in the cup: ${over > 0 ? `${millimetres(over)} mm stays bare above it` : 'nothing stays bare above it'}.`,
      `Between two pins there is ${millimetres(PIN_GAP_METRES)} mm${level < 2 ? '' : `: ${millimetres(pitch)} less ${millimetres(PIN_METRES)}`}.`,
      sayBareEnd(judged),
    ],
  };
}

const SAID_TO_FIT = {
  'thickness of the pin forgotten':
    'The next pin begins before its middle. Take off the thickness of one pin.',
  'bends nowhere': 'It bends where it is stiff. Compare it with the room between the pins.',
  'short is safe': 'Too little is held by the rim alone. It should be as long as the cup is deep.',
  'more holds better': 'Only what is inside the cup is held. The rest stands bare, and bends.',
  'longer is better': 'The cup is no deeper than that. Compare the two lengths.',
  'cup forgotten': 'Take off what is in the cup first. How much stands above it?',
};

function mistakenFit(said: Fit, right: Fit, underPitch: boolean): keyof typeof SAID_TO_FIT {
  if (said === 'too long' && right === 'can touch')
    return underPitch ? 'thickness of the pin forgotten' : 'bends nowhere';
  if (said === 'right') return right === 'too short' ? 'short is safe' : 'more holds better';
  return said === 'too short' ? 'longer is better' : 'cup forgotten';
}
