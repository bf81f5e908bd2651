/** How much of a core is bare above its cup, and whether it can reach the next pin: judged by the floor of making. */
import { CUP_METRES, PIN_GAP_METRES, PIN_METRES, bareEnd, sayBareEnd } from '../../../making/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import { oneOf } from '../forms.ts';
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
  const told =
    level < 2
      ? ([['room between two pins', `${millimetres(PIN_GAP_METRES)} mm`]] as const)
      : ([
          ['from the middle of a pin to the middle of the next', `${millimetres(pitch)} mm`],
          ['thickness of a pin', `${millimetres(PIN_METRES)} mm`],
        ] as const);
  const over = Math.max(0, bare * 1e-3 - CUP_METRES);
  return {
    ask: `A core for the cup of a DIN pin is stripped by ${bare} mm, and pushed in to the bottom. How does it fit?`,
    shows: {
      shows: 'rows',
      rows: [['depth of the cup', `${millimetres(CUP_METRES)} mm`], ...told],
    },
    ...oneOf(
      (Object.keys(FIT_TEXTS) as readonly Fit[]).map((fit) =>
        fit === judged.fit
          ? { text: FIT_TEXTS[fit], right: true as const }
          : { text: FIT_TEXTS[fit], ...saidToFit(fit, judged.fit, level >= 2 && over < pitch) },
      ),
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

function saidToFit(
  said: Fit,
  right: Fit,
  underPitch: boolean,
): { readonly slip: string; readonly says: string } {
  if (said === 'too long' && right === 'can touch')
    return underPitch
      ? {
          slip: 'thickness of the pin forgotten',
          says: 'The next pin begins before its middle. Take off the thickness of one pin.',
        }
      : {
          slip: 'bends nowhere',
          says: 'It bends where it is stiff. Compare it with the room between the pins.',
        };
  if (said === 'right')
    return right === 'too short'
      ? {
          slip: 'short is safe',
          says: 'Too little is held by the rim alone. It should be as long as the cup is deep.',
        }
      : {
          slip: 'more holds better',
          says: 'Only what is inside the cup is held. The rest stands bare, and bends.',
        };
  if (said === 'too short')
    return { slip: 'longer is better', says: 'The cup is no deeper than that. Compare the two lengths.' };
  return { slip: 'cup forgotten', says: 'Take off what is in the cup first. How much stands above it?' };
}
