/** Tasks on which contact is the source. The same readings are taken on both types: where they agree, nobody can tell. */
import { meterProfile, readJack, sayReading } from '../../../readings/index.ts';
import type { TakenReading } from '../../../readings/index.ts';
import { jackReading, underTestFrom } from '../../jacks.ts';
import { casesAt, whichText } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { ASKED, JACKS, inFinder, type AskedName, type Hidden } from './measured.ts';

/** Readings of a jack of the loop, Type A or B. */
interface Read {
  readonly told: string;
  readonly pair: readonly [a: Hidden, b: Hidden];
  readonly names: readonly AskedName[];
  readonly meter?: 'low-diode';
}

const OUT = 'an OUT of the loop';
const IN = 'an IN of the loop';
/** Cases by level: the last two are traps. */
const CASES: readonly Read[] = [
  { told: OUT, pair: ['outA', 'outB'], names: ['ring', 'tip', 'clock'] },
  { told: IN, pair: ['inA', 'inB'], names: ['diode', 'diodeBack'] },
  { told: OUT, pair: ['outA', 'outB'], names: ['ring', 'tip'] },
  { told: 'a 3.3 V OUT that lets go of its sink at rest', pair: ['lowA', 'lowB'], names: ['ring', 'tip'] },
  { told: IN, pair: ['inA', 'inB'], names: ['ring', 'tip'] },
  { told: IN, pair: ['inA', 'inB'], names: ['diode', 'diodeBack'], meter: 'low-diode' },
  { told: OUT, pair: ['outA', 'outB'], names: ['across'] },
];

const PLACES = { ring: 'The ring', tip: 'The tip', neither: 'These readings cannot tell' } as const;
type Place = keyof typeof PLACES;

/** Which contact of a jack is the source. */
export function sourceContact(level: Level, chance: Chance): Drawn {
  const one = chance.turn(casesAt(level, CASES, [3, 5]));
  const isA = chance.pick([true, false]);
  const meter = one.meter ?? 'usual';
  const takenOn = (hidden: Hidden): readonly TakenReading[] =>
    one.names.map((name) => {
      const at = jackReading(...ASKED[name]);
      return { at, reading: readJack(underTestFrom(JACKS[hidden]), at, meterProfile(meter)) };
    });
  const shown = (taken: readonly TakenReading[]): readonly string[] =>
    taken.map(({ reading }) => sayReading(reading));
  const taken = takenOn(one.pair[isA ? 0 : 1]);
  const [ofA, ofB] = [shown(takenOn(one.pair[0])), shown(takenOn(one.pair[1]))];
  const seen = shown(taken);
  // Type A has its source on the ring, Type B on the tip.
  const right: Place = ofA.join() === ofB.join() ? 'neither' : isA ? 'ring' : 'tip';
  const diode = one.names.includes('diode');
  const says = {
    ring: rule(one, right),
    tip: rule(one, right),
    neither: diode
      ? 'The two ways of the diode test differ, so they do tell.'
      : 'One of these readings differs between the two contacts, or has a sign. So it does tell.',
  } as const;
  return {
    ask: `A phone jack is known as ${one.told}. ${one.meter ? 'The diode test of this meter ends at 1.5 V. ' : ''}The red probe is named first. Which contact is the source?`,
    ...inFinder(taken, { marked: one.told === IN ? 'in' : 'out', meter }),
    ...whichText(PLACES, right, (place) => [slipOf(place, right), says[place]], chance),
    hints: [
      'At rest both lines of a 5 V output stand at one voltage. An input shows none.',
      diode
        ? 'One way the test goes through the LED, the other way through the diode beside it. The LED needs more.'
        : 'While the clock runs, a plus means that the red probe is on the source.',
      diode
        ? 'Where the meter shows more, or cannot push hard enough, the red probe is on the source.'
        : 'Two readings alike tell nothing. Is there one that is not alike, or a sign?',
    ],
    steps: [`Read: ${seen.join('; ')}.`, rule(one, right), `${PLACES[right]}.`],
  };
}

function slipOf(said: Place, right: Place): string {
  if (right === 'neither') return `guesses the ${said}`;
  return said === 'neither' ? 'says it cannot tell' : 'the wrong way round';
}

/** What the readings of a task go by. */
function rule({ names, told, meter }: Read, right: Place): string {
  if (right === 'neither')
    return told === IN
      ? 'An input shows no volts on either contact: ask it in another way.'
      : 'At rest both lines stand at the same voltage, so nothing sets them apart.';
  if (names.includes('diode'))
    return meter
      ? 'Overload means that this meter cannot push hard enough for the LED. That way the red probe is on the source.'
      : 'The higher of the two is the LED. That way the red probe is on the source.';
  if (names.includes('clock')) return 'The sign names it: with a plus, the red probe is on the source.';
  return 'The contact that shows the volts is the source. The sink is let go at rest.';
}
