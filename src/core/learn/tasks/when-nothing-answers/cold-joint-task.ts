/** A joint that comes and goes: in which lead, and on which of its lines. What each cold joint shows is asked of the faults. */
import { taughtTable } from '../../../faults/index.ts';
import type { Symptom } from '../../../faults/index.ts';
import { HUNT_CAUTION } from '../cautions.ts';
import { inRows, met, whichOf, whichText, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { BOARD_WORDS } from './piles.ts';

const BOARD = 'chain';
const LEADS = ['lead 1', 'lead 2'] as const;
const LINES = ['source', 'sink'] as const;
type Place = (typeof LEADS)[number];

/** A cold joint of the board: its lead, its line, and its number in the table. */
interface Cold {
  readonly lead: Place;
  readonly line: (typeof LINES)[number];
  readonly at: number;
}

/** Every cold joint of the board; a line is told by the continuity check that flickers. */
function coldJoints(): readonly Cold[] {
  const { faults } = taughtTable(BOARD);
  return LEADS.flatMap((lead) =>
    faults.flatMap(({ kind, place }, at) => {
      const line = LINES.find((one) => seenWith(`continuity ${one} ${lead}`, at) === 'flickers');
      return kind === 'cold-joint' && place === lead && line !== undefined ? [{ lead, line, at }] : [];
    }),
  );
}

const indexOfCheck = (id: string): number =>
  taughtTable(BOARD).observations.findIndex((one) => one.id === id);
const seenWith = (id: string, fault: number): string | undefined =>
  taughtTable(BOARD).seen[indexOfCheck(id)]?.[fault];
const wordsOf = (id: string): string =>
  (taughtTable(BOARD).observations[indexOfCheck(id)]?.words ?? '').replace(/\.$/, '');

/** What is told of each pedal; undefined where nobody watched it. */
type Told = readonly (Symptom | undefined)[];

const WATCHED: Readonly<Partial<Record<Symptom, string>>> = {
  'the right preset': 'does what it should',
  'comes and goes when leads are moved': 'comes and goes when leads are moved',
};

const toldRows = (told: Told): readonly (readonly [string, string])[] =>
  told.map((one, at) => [`pedal ${at + 1}`, one === undefined ? 'nobody watched it' : (WATCHED[one] ?? one)]);

/** Cold joints that fit what was told of the pedals and seen at checks. */
function fitting(told: Told, checks: readonly (readonly [id: string, seen: string])[]): readonly Cold[] {
  const { symptoms } = taughtTable(BOARD);
  return coldJoints().filter(
    ({ at }) =>
      told.every((one, pedal) => one === undefined || symptoms[at]?.[pedal] === one) &&
      checks.every(([id, seen]) => seenWith(id, at) === seen),
  );
}

/** A joint that comes and goes: where it is, and at level 3 what is known after both leads were changed at once. */
export function comesAndGoes(level: Level, chance: Chance): Drawn {
  return level === 3 ? twoAtOnce(chance) : whichJoint(level, chance);
}

const jointWords = ({ lead, line }: Cold): string => `The ${line} line of ${lead}`;

function whichJoint(level: Level, chance: Chance): Drawn {
  const all = coldJoints();
  const { symptoms } = taughtTable(BOARD);
  // The line that flickers is read, or the other one, which does not.
  const cases = all.flatMap((cold) => LINES.map((read) => ({ cold, read })));
  const { cold, read } = chance.turn(level === 0 ? cases.filter((one) => one.read === one.cold.line) : cases);
  const check = `continuity ${read} ${cold.lead}`;
  const seen = seenWith(check, cold.at) ?? '';
  const told = symptoms[cold.at] ?? [];
  return {
    ask: `${BOARD_WORDS[BOARD]} One joint of a source line or a sink line is cold. Which line has it?`,
    shows: inRows([...toldRows(told), [wordsOf(check), seen]]),
    ...whichOf(all, cold, jointWords, (one) => saidToJoint(one, cold, seen), chance),
    hints: [
      'A cold joint touches while it lies still, and opens when it is moved.',
      'Which pedals come and go? What feeds both, and what feeds the second one alone?',
      'A line that flickers while its plug is moved has the cold joint. A line that goes on beeping has none.',
    ],
    caution: HUNT_CAUTION,
    steps: [
      `Pedal 1 ${WATCHED[told[0] ?? 'nothing'] ?? ''}: it is ${cold.lead}.`,
      `The reading ${seen === 'flickers' ? 'flickers' : 'stays'}: the ${read} line ${seen === 'flickers' ? 'parts when it is moved' : 'is whole'}.`,
      `${jointWords(cold)}. Heat that joint again with fresh solder, then test the whole lead.`,
    ],
  };
}

function saidToJoint(said: Cold, cold: Cold, seen: string): Mistake {
  const sentences = {
    'wrong line': 'The line that was read is the one that flickers.',
    'beep taken for the fault': 'The line that was read goes on beeping while it is moved. It is whole.',
    'cleared boxes forgotten':
      cold.lead === 'lead 1'
        ? 'Both pedals come and go, and lead 2 feeds only the second.'
        : 'Pedal 1 does what it should, so lead 1 is cleared.',
  };
  if (said.lead !== cold.lead) return met(sentences, 'cleared boxes forgotten');
  return met(sentences, seen === 'flickers' ? 'wrong line' : 'beep taken for the fault');
}

const RIGHT: Symptom = 'the right preset';
const SHAKY: Symptom = 'comes and goes when leads are moved';

/** What is told, and which line of which lead was read before, with a steady beep. */
const AT_ONCE: readonly { readonly told: Told; readonly steady: Place | undefined }[] = [
  { told: [undefined, SHAKY], steady: undefined },
  { told: [SHAKY, SHAKY], steady: undefined },
  { told: [undefined, SHAKY], steady: 'lead 2' },
  { told: [RIGHT, SHAKY], steady: undefined },
  { told: [undefined, SHAKY], steady: 'lead 1' },
  { told: [SHAKY, undefined], steady: undefined },
];

const AT_ONCE_TEXTS = {
  'lead 1': 'Lead 1, for certain',
  'lead 2': 'Lead 2, for certain',
  both: 'Both leads, for certain',
  unknown: 'It cannot be told yet',
};

const SAID_AT_ONCE = {
  'two symptoms, two faults': 'One joint is cold. It is in one lead.',
  'cleared boxes forgotten':
    'There is more to go by than the change: what was seen before it clears one of the leads.',
  'two swaps at once': 'Both leads were changed at once. Either of the old ones could have been to blame.',
  'wrong lead': 'Go along the chain. Which lead feeds what came and went, and what was seen to be steady?',
};

function twoAtOnce(chance: Chance): Drawn {
  const { told, steady } = chance.turn(AT_ONCE);
  const checks = steady ? LINES.map((line) => [`continuity ${line} ${steady}`, 'beeps'] as const) : [];
  const leads = new Set(fitting(told, checks).map(({ lead }) => lead));
  const [only] = leads.size === 1 ? leads : [];
  const right = only ?? 'unknown';
  return {
    ask: `${BOARD_WORDS[BOARD]} One joint of a source line or a sink line is cold. Then, with the power off, both leads were changed for tested ones at once. Now all is steady. Which of the old leads has the cold joint?`,
    shows: inRows([...toldRows(told), ...checks.map(([id, seen]) => [wordsOf(id), seen] as const)]),
    ...whichText(AT_ONCE_TEXTS, right, (one) => met(SAID_AT_ONCE, mistakeAtOnce(one, only)), chance),
    hints: [
      'Two changes at once tell of the two together, and of neither alone.',
      'What was seen before the change? A pedal that came and went, or did not, tells of the lead that feeds it.',
      'Cross out each lead that what is told rules out. Is there one left, or two?',
    ],
    caution: HUNT_CAUTION,
    steps: [
      only === undefined
        ? 'Pedal 2 comes and goes with a cold joint in either lead, and nothing else was seen.'
        : `What was seen fits ${only} alone.`,
      only === undefined
        ? 'It cannot be told yet. Put one old lead back and try: one change at a time.'
        : `${AT_ONCE_TEXTS[right]}.`,
    ],
  };
}

function mistakeAtOnce(said: keyof typeof AT_ONCE_TEXTS, only: Place | undefined): keyof typeof SAID_AT_ONCE {
  if (said === 'both') return 'two symptoms, two faults';
  if (said === 'unknown') return 'cleared boxes forgotten';
  return only === undefined ? 'two swaps at once' : 'wrong lead';
}
