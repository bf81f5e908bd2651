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
import { outcomeWords } from './outcomes.ts';
import type { Note, Outcome } from './outcomes.ts';
import { partWords } from './part-words.ts';
import type { Reach } from './reach.ts';
import type { PartReading, StateReading } from './readings.ts';
import { sayAmperes, sayInput, sayList, sayVolts } from './speak.ts';

/** A line counts as shorted when its resistor drops at least this share of the supply (our choice: a lit LED leaves a third). */
const SHORTED_SHARE = 0.9;

/** What the notes are drawn from; `readings` may hold both states for both ways of joining grounds. */
export interface NoteGrounds {
  readonly link: Link;
  readonly readings: readonly StateReading[];
  readonly reach: readonly Reach[];
  readonly misfits: readonly Misfit[];
  readonly byGrounding: Readonly<Record<Grounding, Outcome>>;
}

/** Every note that applies, in the order of the list of notes. */
export function notesOf(facts: NoteGrounds): readonly Note[] {
  const { link } = facts;
  const notes: (Note | undefined)[] = [
    overRating(facts.readings, link.branches.length),
    shorted(facts, 'source-resistor', 'source-shorted'),
    shorted(facts, 'sink-resistor', 'stage-shorted'),
    dependsOnGrounds(facts),
    groundsJoined(facts),
    shieldOpen(facts),
    link.branches.length > 1
      ? { kind: 'split', detail: `${link.branches.length} inputs share one output; the standard allows one` }
      : undefined,
    tooLong(link),
    facts.misfits.length > 0
      ? { kind: 'plug-does-not-fit', detail: sayList(facts.misfits.map(({ reason }) => reason)) }
      : undefined,
    sparePins(facts),
    practice(link),
  ];
  return notes.filter((note) => note !== undefined);
}

function dependsOnGrounds({ byGrounding: { separate, joined } }: NoteGrounds): Note | undefined {
  if (separate === joined) return undefined;
  const [apart, together] = [separate, joined].map((outcome) => outcomeWords(outcome).label.toLowerCase());
  return {
    kind: 'depends-on-grounds',
    detail: `grounds separate: ${apart ?? ''}; joined elsewhere: ${together ?? ''}`,
  };
}

function overRating(readings: readonly StateReading[], inputs: number): Note | undefined {
  const worst = new Map<string, PartReading>();
  for (const { parts } of readings) {
    for (const reading of parts) {
      if (reading.over === undefined) continue;
      const known = worst.get(reading.part.element.name);
      if (!known || Math.abs(reading.amperes) > Math.abs(known.amperes))
        worst.set(reading.part.element.name, reading);
    }
  }
  if (worst.size === 0) return undefined;
  return {
    kind: 'over-rating',
    detail: sayList([...worst.values()].map((one) => `${partWords(one.part, inputs)}: ${one.over ?? ''}`)),
  };
}

function shorted(
  facts: NoteGrounds,
  role: 'source-resistor' | 'sink-resistor',
  kind: 'source-shorted' | 'stage-shorted',
): Note | undefined {
  const { output } = facts.link;
  if (output.circuit === 'driver-off') return undefined;
  const supply = valueAt(output, 'supplyVolts');
  for (const { parts, state } of facts.readings) {
    const found = parts.find(({ part }) => part.owner.place === 'output' && part.role === role);
    if (found && Math.abs(found.volts) > SHORTED_SHARE * supply) {
      return {
        kind,
        detail: `${sayAmperes(Math.abs(found.amperes))} through ${partWords(found.part, facts.link.branches.length)} in ${state}, ${sayVolts(Math.abs(found.volts))} across it`,
      };
    }
  }
  return undefined;
}

function shieldReach(facts: NoteGrounds): Reach | undefined {
  const shield = styleEntry(facts.link.output.style).lines.shield;
  return shield === undefined ? undefined : facts.reach.find(({ contact }) => contact === shield);
}

function groundsJoined(facts: NoteGrounds): Note | undefined {
  const reach = shieldReach(facts);
  const joined = (reach?.inputs ?? []).filter(({ branch, contact }) => {
    const input = facts.link.branches[branch]?.input;
    return (
      input &&
      styleEntry(input.style).family === 'ground-referenced' &&
      lineAt(input.style, contact) === 'shield'
    );
  });
  if (joined.length === 0) return undefined;
  const inputs = facts.link.branches.length;
  return {
    kind: 'grounds-joined',
    detail: `this lead joins the ground of the output to that of ${sayList(joined.map(({ branch }) => sayInput(branch, inputs)))}`,
  };
}

function shieldOpen(facts: NoteGrounds): Note | undefined {
  const reach = shieldReach(facts);
  if (!reach) return undefined;
  const open = facts.link.branches.flatMap(({ input }, branch) => {
    const shield = styleEntry(input.style).lines.shield;
    if (shield === undefined || reach.inputs.some((one) => one.branch === branch && one.contact === shield))
      return [];
    return [`${contactWords(shield)} of ${sayInput(branch, facts.link.branches.length)}`];
  });
  if (open.length === 0) return undefined;
  return {
    kind: 'shield-open',
    detail: `${contactWords(reach.contact)} of the output does not reach ${sayList(open)}`,
  };
}

function tooLong(link: Link): Note | undefined {
  for (const { leads } of link.branches) {
    const metres = leads.reduce((sum, lead) => sum + lead.lengthMetres, 0);
    if (metres > STANDARD_METRES)
      return {
        kind: 'too-long',
        detail: `${metres.toFixed(1)} m in all; the standard stops at ${STANDARD_METRES} m`,
      };
    const adapter = leads.find(
      (lead) => lead.lengthMetres > ADAPTER_METRES && lead.from.form !== lead.to.form,
    );
    if (adapter)
      return {
        kind: 'too-long',
        detail: `adapter '${adapter.name}' is ${adapter.lengthMetres} m; at most ${ADAPTER_METRES} m is recommended`,
      };
  }
  return undefined;
}

function sparePins(facts: NoteGrounds): Note | undefined {
  const spare = facts.reach.filter(({ contact, inputs }) => /^[1367]$/.test(contact) && inputs.length > 0);
  if (spare.length === 0) return undefined;
  return {
    kind: 'spare-pins',
    detail: `${sayList(spare.map(({ contact }) => contactWords(contact)))} of the output ${spare.length > 1 ? 'go' : 'goes'} through; some devices put a supply there`,
  };
}

function practice(link: Link): Note | undefined {
  const styles = [link.output, ...link.branches.map(({ input }) => input)].map(({ style }) =>
    styleEntry(style),
  );
  const loose = [...new Set(styles.filter(({ status }) => status === 'P').map(({ label }) => label))];
  if (loose.length === 0) return undefined;
  return { kind: 'practice', detail: `${sayList(loose)}: common practice, no standard; check the manual` };
}
