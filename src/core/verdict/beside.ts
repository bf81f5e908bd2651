/** What is on a jack that no standard draws, in words, and the jack without it. */
import {
  contactWords,
  exchangedContacts,
  extraEntry,
  foreignOn,
  linesInside,
  valueAt,
} from '../wiring/index.ts';
import type { Extra, Jack, ValueName } from '../wiring/index.ts';
import { sayList, sayOhms, sayVolts } from './speak.ts';

/** Values that are 0 where nothing is there. */
const LOADS = {
  activityOhms: 'an activity LED across the input takes part of its current',
  tapOhms: 'a load from the source line to ground takes part of the current',
} as const;
const TAKE_OFF = {
  activityOhms: 'take the activity LED off',
  tapOhms: 'take the load off the source line',
} as const;
const FOREIGN: readonly ValueName[] = ['foreignAcrossVolts', 'foreignSourceVolts', 'foreignSinkVolts'];

const loadsOn = (jack: Jack): readonly (keyof typeof LOADS)[] =>
  (['activityOhms', 'tapOhms'] as const).filter((name) => (jack.values[name] ?? 0) > 0);

/** Every foreign supply on a jack: '−12.00 V on pin 4 of the output, against its ground'. */
export function foreignWords(jack: Jack, place: string): readonly string[] {
  const lines = linesInside(jack);
  return foreignOn(jack).flatMap(({ volts, plus, minus }) => {
    const contact = lines[plus];
    const other = minus === 'ground' ? undefined : lines[minus];
    if (contact === undefined || (minus !== 'ground' && other === undefined)) return [];
    const against = other === undefined ? 'its ground' : contactWords(other);
    return [`${sayVolts(volts)} on ${contactWords(contact)} of ${place}, against ${against}`];
  });
}

/** Contacts exchanged inside a jack: 'pin 4 and pin 5 of the input are exchanged'; undefined where none are. */
export function exchangedWords(jack: Jack, place: string): string | undefined {
  const pair = jack.extras?.includes('crossed-inside') ? exchangedContacts(jack.connector) : undefined;
  return pair && `${sayList(pair.map(contactWords))} of ${place} are exchanged inside`;
}

/** A shield contact tied to ground at an input: 'pin 2 of the input …'; undefined where it is not. `joins`: the leads bring a ground there. */
export function tiedWords(jack: Jack, place: string, joins: boolean): string | undefined {
  const { shield } = linesInside(jack);
  if (shield === undefined || !jack.extras?.includes('shield-tied')) return undefined;
  const tied = `${contactWords(shield)} of ${place} is tied to ground`;
  return joins
    ? `${tied}: ${extraEntry('shield-tied').means}`
    : `${tied}; the standard leaves it open here, since a lead with its shield joined at both ends then joins the grounds of both devices`;
}

/** A shield contact of the output that is tied to nothing inside; undefined where it is tied. */
export function untiedWords(output: Jack): string | undefined {
  const { shield } = linesInside(output);
  if (shield === undefined || !output.extras?.includes('shield-untied')) return undefined;
  return `${contactWords(shield)} of the output is tied to nothing inside: ${extraEntry('shield-untied').means}; the standard ties it to ground`;
}

/** What else is round the loop of a jack, each thing in words. */
export function loopWords(jack: Jack, place: string): readonly string[] {
  const inside = (jack.extras ?? []).filter((one) => ['loop', 'diode'].includes(extraEntry(one).about));
  return [
    ...inside.map((one) => `${place}: ${extraEntry(one).means}`),
    ...loadsOn(jack).map((name) => `${place}: ${LOADS[name]} (${sayOhms(valueAt(jack, name))})`),
  ];
}

/** A jack with something taken away, and what to do for it in words. */
interface Mended {
  readonly jack: Jack;
  readonly words: string;
}

/** A jack without each thing that no standard draws, one by one, and, where there are several, without them all. */
export function mendedJacks(jack: Jack, place: string): readonly Mended[] {
  const extras = jack.extras ?? [];
  const foreign = foreignOn(jack).length > 0 ? [takenOff(jack, FOREIGN)] : [];
  const steps = [
    ...foreign.map((changed) => ({ changed, words: 'take the foreign supply off' })),
    ...extras.map((one) => ({ changed: without(jack, one), words: extraEntry(one).mend })),
    ...loadsOn(jack).map((name) => ({ changed: takenOff(jack, [name]), words: TAKE_OFF[name] })),
  ];
  const say = (words: readonly string[]): string => `At ${place}: ${sayList(words)}.`;
  const singles = steps.map(({ changed, words }) => ({ jack: changed, words: say([words]) }));
  if (steps.length < 2) return singles;
  const all = takenOff({ ...jack, extras: [] }, [...FOREIGN, ...loadsOn(jack)]);
  return [...singles, { jack: all, words: say([...new Set(steps.map(({ words }) => words))]) }];
}

const without = (jack: Jack, extra: Extra): Jack => ({
  ...jack,
  extras: (jack.extras ?? []).filter((one) => one !== extra),
});

const takenOff = (jack: Jack, names: readonly ValueName[]): Jack => ({
  ...jack,
  values: Object.fromEntries(
    Object.entries(jack.values).filter(([name]) => !names.includes(name as ValueName)),
  ),
});
