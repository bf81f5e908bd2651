/** Tasks on what readings say of a lead: the fault that explains them, and the reading that splits what is left. */
import { faultsOf, sayLeadFault, sayPlace, saySet } from '../../../making/index.ts';
import type { Beep, LeadFault, ProofPlace } from '../../../making/index.ts';
import type { Lead } from '../../../wiring/index.ts';
import { drawUntil } from '../chance.ts';
import { inRows, oneOf, whichOf, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import {
  HEARD,
  PLANS,
  placeText,
  sayPlan,
  saysWith,
  stillColumns,
  stillPlaces,
  type Column,
} from './leads.ts';
import { capital } from '../../../verdict/index.ts';

/** Kinds of fault, by level: those that differ from the others in every reading come first. */
const KINDS: readonly (readonly LeadFault['kind'][])[] = [
  ['open', 'short', 'swapped'],
  ['open', 'short', 'swapped'],
  ['open', 'short', 'swapped', 'cold-joint', 'wrong-contact'],
  ['open', 'short', 'swapped', 'cold-joint', 'wrong-contact', 'mirrored'],
];

/** Readings beside the conductors that are told: of contacts that should be silent. */
const CROSSINGS = 2;

interface Told {
  readonly place: ProofPlace;
  readonly says: Beep;
}

/** The readings that are told of a faulty lead: each conductor, moved where it flickers, and crossings, those first that beep. */
function toldOf(lead: Lead, fault: LeadFault, chance: Chance): readonly Told[] {
  const says = saysWith(lead, [fault]);
  const planned = saysWith(lead, []);
  const through = lead.conductors.map(({ from, to }): ProofPlace => {
    const ends = { a: { side: 'from', contact: from }, b: { side: 'to', contact: to } } as const;
    const hold = (['from', 'to'] as const).find((one) => says({ ...ends, hold: one }) === 'flickers');
    return { ...ends, hold: hold ?? 'still' };
  });
  const apart = chance.shuffled(stillPlaces(lead).filter((place) => planned(place) === 'silent'));
  const crossings = [
    ...apart.filter((one) => says(one) === 'beep'),
    ...apart.filter((one) => says(one) !== 'beep'),
  ];
  return [...through, ...crossings.slice(0, CROSSINGS)].map((place) => ({ place, says: says(place) }));
}

/** Answers to choose from. */
const OFFERED = 4;

/** The fault that explains all readings. */
export function faultFromBeeps(level: Level, chance: Chance): Drawn {
  const kind = chance.turn(KINDS[level] as readonly LeadFault['kind'][]);
  const plans = PLANS.filter(({ lead }) => faultsOf(lead).some((one) => one.kind === kind));
  const { lead } = chance.pick(plans);
  const fault = chance.pick(faultsOf(lead).filter((one) => one.kind === kind));
  const told = toldOf(lead, fault, chance);
  const unlike = (one: readonly LeadFault[]): Told | undefined => {
    const says = saysWith(lead, one);
    return told.find(({ place, says: heard }) => says(place) !== heard);
  };
  const odd = told.filter(({ place, says }) => saysWith(lead, [])(place) !== says);
  // Those that explain most of what is odd come first.
  const near = (one: LeadFault): number => {
    const says = saysWith(lead, [one]);
    return odd.filter(({ place, says: heard }) => says(place) === heard).length;
  };
  const two = twoFaults(lead, told);
  const singles = chance
    .shuffled(faultsOf(lead))
    .flatMap((one) => (unlike([one]) ? [{ one, explains: near(one) }] : []))
    .sort((x, y) => y.explains - x.explains)
    .slice(0, OFFERED - (two ? 2 : 1))
    .map(({ one }) => one);
  return {
    ask: `${sayPlan(lead)} A meter on continuity said this. Which of these explains all of it?`,
    shows: inRows(told.map(({ place, says }) => [sayPlace(place), HEARD[says]])),
    material: { on: 'lead test', lead, faults: [fault] },
    ...oneOf(
      [
        { text: textOf(lead, [fault]), right: true },
        ...singles.map((one) => ({ text: textOf(lead, [one]), ...saidToSingle(one, fault, unlike([one])) })),
        ...(two ? [{ text: textOf(lead, two), ...TWO_FAULTS }] : []),
      ],
      chance,
    ),
    hints: [
      'The plainest story explains all that was heard, what is in order too.',
      'Mark what differs from the plan: a wire that is silent, or two contacts that beep and should not.',
      'Two silent wires are most often one mistake: they changed places.',
    ],
    steps: [
      odd.length === 0
        ? 'All is as planned.'
        : `Not as planned: ${odd.map(({ place, says }) => `${sayPlace(place)}, ${HEARD[says]}`).join('; ')}.`,
      `${textOf(lead, [fault])}.`,
    ],
  };
}

const textOf = (lead: Lead, faults: readonly LeadFault[]): string => capital(saySet(lead, faults));

const TWO_FAULTS = {
  slip: 'two symptoms, two faults',
  says: 'One fault explains all of it. Look for that before you look for two.',
};

/** Two wires broken, where two are silent: a story of two faults. */
function twoFaults(lead: Lead, told: readonly Told[]): readonly LeadFault[] | undefined {
  const silent = lead.conductors.flatMap((_, conductor) =>
    told[conductor]?.says === 'silent' ? [{ kind: 'open', conductor } as const] : [],
  );
  return silent.length < 2 ? undefined : silent.slice(0, 2);
}

/** What is said to a single fault that does not explain a reading. */
function saidToSingle(
  said: LeadFault,
  right: LeadFault,
  unlike: Told | undefined,
): { readonly slip: string; readonly says: string } {
  const place = unlike ? `${sayPlace(unlike.place)}: ${HEARD[unlike.says]}` : '';
  if (right.kind === 'cold-joint' && said.kind !== 'cold-joint')
    return {
      slip: 'a beep is a good joint',
      says: `A joint that touches while it lies still, and parts when it is moved, is cold. It does not fit this reading: ${place}.`,
    };
  return {
    slip: said.kind === 'cold-joint' ? 'calls it cold' : 'explains a part',
    says: `That does not explain this reading: ${place}.`,
  };
}

/** Suspects of a lead in a list, by level. */
const SUSPECTS = [4, 4, 5, 6] as const;

interface Readings {
  readonly suspects: readonly Column[];
  /** Numbers of places among the still ones: the best, then the others. */
  readonly offered: readonly number[];
}

/** The largest group of suspects that say the same at a place. */
function worstAt(suspects: readonly Column[], place: number): number {
  const groups = Map.groupBy(suspects, ({ says }) => says[place]);
  return Math.max(...[...groups.values()].map(({ length }) => length));
}

/** Suspects that all explain one silent conductor, and four readings of which one splits them best. */
function drawReadings(lead: Lead, silent: number, level: Level, chance: Chance): Readings | undefined {
  const all = stillColumns(lead).filter(({ says }) => says[silent] === 'silent');
  const suspects = chance.shuffled(all).slice(0, SUSPECTS[level]);
  const places = [...stillPlaces(lead).keys()].filter((place) => place !== silent);
  const ranked = chance.shuffled(places).toSorted((a, b) => worstAt(suspects, a) - worstAt(suspects, b));
  const [best = 0, ...rest] = ranked;
  const others = rest.filter((place) => worstAt(suspects, place) > worstAt(suspects, best));
  // The others tell of one suspect, so that the best is not the only one that tells anything.
  const telling = others.filter((place) => worstAt(suspects, place) < suspects.length);
  const wrong = [...new Set([...telling.slice(0, 2), ...chance.shuffled(others)])].slice(0, OFFERED - 2);
  if (telling.length < OFFERED - 2) return undefined;
  return worstAt(suspects, best) === suspects.length
    ? undefined
    : { suspects, offered: [best, ...wrong, silent] };
}

/** The reading that splits the suspects best, after one silent conductor. */
export function bestReading(level: Level, chance: Chance): Drawn {
  const cases = PLANS.flatMap(({ lead }) => lead.conductors.map((conductor) => ({ lead, conductor })));
  const { lead, conductor } = chance.turn(cases);
  const places = stillPlaces(lead);
  const silent = places.findIndex(
    ({ a, b }) =>
      a.side === 'from' && b.side === 'to' && a.contact === conductor.from && b.contact === conductor.to,
  );
  const { suspects, offered } = drawUntil(() => drawReadings(lead, silent, level, chance));
  const text = (place: number): string => placeText(places[place] as ProofPlace);
  const worst = (place: number): number => worstAt(suspects, place);
  const [best = 0] = offered;
  return {
    ask: `${sayPlan(lead)} One reading is taken: ${sayPlace(places[silent] as ProofPlace)} is silent. One of these is the fault, each as likely as the next. Which reading leaves the fewest of them at worst?`,
    shows: inRows(suspects.map(({ fault }, at) => [`suspect ${at + 1}`, sayLeadFault(lead, fault)])),
    ...whichOf(
      offered,
      best,
      text,
      (place) => (place === silent ? READ_AGAIN : ['favourite first', saidToOne(worst(place))]),
      chance,
    ),
    hints: [
      'A good reading cuts the list in two, whatever it says.',
      'For each reading, say of each suspect whether it would beep.',
      'Count the suspects that would beep and those that would not. The larger number is what is left at worst.',
    ],
    steps: [
      ...offered
        .map((place) => `${text(place)}: at worst ${worst(place)} of ${suspects.length} are left.`)
        .toSorted(),
      `The fewest are left by this one: ${text(best)}.`,
    ],
  };
}

const READ_AGAIN: Mistake = ['reads it again', 'That reading was taken. It would tell the same as before.'];
const saidToOne = (worst: number): string =>
  `It asks about one suspect only. As a rule it is another, and ${worst} are left.`;
