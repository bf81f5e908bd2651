/** The notes beside an outcome: each from a solved current, a voltage, or what the leads join. */
import {
  ADAPTER_METRES,
  STANDARD_METRES,
  contactWords,
  lineAt,
  styleEntry,
  valueAt,
} from '../wiring/index.ts';
import type { Grounding, Link, Misfit } from '../wiring/index.ts';
import { NOTES, outcomeWords } from './outcomes.ts';
import type { Note, NoteKind, Outcome } from './outcomes.ts';
import { partWords } from './part-words.ts';
import type { Reach } from './reach.ts';
import type { PartReading, StateReading } from './readings.ts';
import { sayAmperes, sayInput, sayList, sayVolts } from './speak.ts';

/** A line counts as shorted when its resistor drops at least this share of the supply (our choice: a lit LED leaves a third). */
const SHORTED_SHARE = 0.9;

/** What the notes are drawn from; `readings` may hold both states for both ways of joining grounds. */
interface NoteGrounds {
  readonly link: Link;
  readonly readings: readonly StateReading[];
  readonly reach: readonly Reach[];
  readonly misfits: readonly Misfit[];
  readonly byGrounding: Readonly<Record<Grounding, Outcome>>;
}

/** Every note that applies, in the order of the list of notes. */
export function notesOf(facts: NoteGrounds): readonly Note[] {
  const details: Readonly<Record<NoteKind, string | undefined>> = {
    'over-rating': overRating(facts.readings, facts.link.branches.length),
    'source-shorted': shorted(facts, 'source-resistor'),
    'stage-shorted': shorted(facts, 'sink-resistor'),
    'depends-on-grounds': dependsOnGrounds(facts.byGrounding),
    'grounds-joined': groundsJoined(facts),
    'shield-open': shieldOpen(facts),
    split: split(facts.link),
    'too-long': tooLong(facts.link),
    'plug-does-not-fit': sayList(facts.misfits.map(({ reason }) => reason)),
    'spare-pins': sparePins(facts),
    practice: practice(facts.link),
  };
  return NOTES.flatMap((kind) => {
    const detail = details[kind];
    return detail ? [{ kind, detail }] : [];
  });
}

function dependsOnGrounds({ separate, joined }: NoteGrounds['byGrounding']): string | undefined {
  const label = (outcome: Outcome): string => outcomeWords(outcome).label.toLowerCase();
  return separate === joined
    ? undefined
    : `grounds separate: ${label(separate)}; joined elsewhere: ${label(joined)}`;
}

function overRating(readings: readonly StateReading[], inputs: number): string | undefined {
  const worst = new Map<string, PartReading>();
  for (const reading of readings.flatMap(({ parts }) => parts)) {
    if (reading.over === undefined) continue;
    const { name } = reading.part.element;
    const known = worst.get(name);
    if (!known || Math.abs(reading.amperes) > Math.abs(known.amperes)) worst.set(name, reading);
  }
  return sayList([...worst.values()].map((one) => `${partWords(one.part, inputs)}: ${one.over ?? ''}`));
}

function shorted(
  { link, readings }: NoteGrounds,
  role: 'source-resistor' | 'sink-resistor',
): string | undefined {
  if (link.output.circuit === 'driver-off') return undefined;
  const supply = valueAt(link.output, 'supplyVolts');
  for (const { parts, state } of readings) {
    const found = parts.find(({ part }) => part.owner.place === 'output' && part.role === role);
    const volts = Math.abs(found?.volts ?? 0);
    if (found && volts > SHORTED_SHARE * supply)
      return `${sayAmperes(Math.abs(found.amperes))} through ${partWords(found.part, link.branches.length)} in ${state}, ${sayVolts(volts)} across it`;
  }
  return undefined;
}

function shieldReach({ link, reach }: NoteGrounds): Reach | undefined {
  const { shield } = styleEntry(link.output.style).lines;
  return reach.find(({ contact }) => contact === shield);
}

function groundsJoined(facts: NoteGrounds): string | undefined {
  const { branches } = facts.link;
  const joined = (shieldReach(facts)?.inputs ?? []).filter(({ branch, contact }) => {
    const input = branches[branch]?.input;
    return (
      input &&
      styleEntry(input.style).family === 'ground-referenced' &&
      lineAt(input.style, contact) === 'shield'
    );
  });
  return joined.length === 0
    ? undefined
    : `this lead joins the ground of the output to that of ${sayList(joined.map(({ branch }) => sayInput(branch, branches.length)))}`;
}

function shieldOpen(facts: NoteGrounds): string | undefined {
  const reach = shieldReach(facts);
  if (!reach) return undefined;
  const { branches } = facts.link;
  const open = branches.flatMap(({ input }, branch) => {
    const { shield } = styleEntry(input.style).lines;
    const there = reach.inputs.some((one) => one.branch === branch && one.contact === shield);
    return shield === undefined || there
      ? []
      : [`${contactWords(shield)} of ${sayInput(branch, branches.length)}`];
  });
  return open.length === 0
    ? undefined
    : `${contactWords(reach.contact)} of the output does not reach ${sayList(open)}`;
}

function split({ branches }: Link): string | undefined {
  return branches.length > 1
    ? `${branches.length} inputs share one output; the standard allows one`
    : undefined;
}

function tooLong({ branches }: Link): string | undefined {
  for (const { leads } of branches) {
    const metres = leads.reduce((sum, lead) => sum + lead.lengthMetres, 0);
    if (metres > STANDARD_METRES)
      return `${metres.toFixed(1)} m in all; the standard stops at ${STANDARD_METRES} m`;
    const adapter = leads.find(
      ({ lengthMetres, from, to }) => lengthMetres > ADAPTER_METRES && from.form !== to.form,
    );
    if (adapter)
      return `adapter '${adapter.name}' is ${adapter.lengthMetres} m; at most ${ADAPTER_METRES} m is recommended`;
  }
  return undefined;
}

function sparePins({ reach }: NoteGrounds): string | undefined {
  const spare = reach.filter(({ contact, inputs }) => /^[1367]$/.test(contact) && inputs.length > 0);
  return spare.length === 0
    ? undefined
    : `${sayList(spare.map(({ contact }) => contactWords(contact)))} of the output ${spare.length > 1 ? 'go' : 'goes'} through; some devices put a supply there`;
}

function practice({ output, branches }: Link): string | undefined {
  const styles = [output, ...branches.map(({ input }) => input)].map(({ style }) => styleEntry(style));
  const loose = new Set(styles.filter(({ status }) => status === 'P').map(({ label }) => label));
  return loose.size === 0
    ? undefined
    : `${sayList([...loose])}: common practice, no standard; check the manual`;
}
