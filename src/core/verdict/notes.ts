/** The notes beside an outcome: each from a solved current, a voltage, or what the leads join. */
import {
  ADAPTER_METRES,
  STANDARD_METRES,
  contactWords,
  lineAt,
  linesInside,
  styleEntry,
  valueAt,
} from '../wiring/index.ts';
import type { Jack, Link, Misfit } from '../wiring/index.ts';
import { exchangedWords, foreignWords, loopWords, tiedWords, untiedWords } from './beside.ts';
import type { Judgement } from './findings.ts';
import { NOTES, outcomeWords } from './outcomes.ts';
import type { Note, NoteKind, Outcome } from './outcomes.ts';
import { partWords } from './part-words.ts';
import type { Reach } from './reach.ts';
import type { InputReading } from './prepare.ts';
import type { StateReading } from './readings.ts';
import { sayAmperes, sayBeside, sayInput, sayList, sayOhms, sayVolts } from './speak.ts';
import { STANDARD_VOLTS, offStandard } from './standard.ts';

/** A line counts as shorted when its resistor drops at least this share of the supply (our choice: a lit LED leaves a third). */
const SHORTED_SHARE = 0.9;

/** What the notes are drawn from; `readings` may hold both states for both ways of joining grounds. */
interface NoteGrounds {
  readonly judgement: Judgement;
  readonly readings: readonly StateReading[];
  readonly reach: readonly Reach[];
  readonly misfits: readonly Misfit[];
  /** Whether the leads join pin 2 and the shell of a plug. */
  readonly shellOnPin2: boolean;
  /** What the input that decides gets while several outputs that end on it send at once. */
  readonly together: InputReading | undefined;
}

/** Every note that applies, in the order of the list of notes. */
export function notesOf(facts: NoteGrounds): readonly Note[] {
  const details: Readonly<Record<NoteKind, string | undefined>> = {
    'over-rating': facts.judgement.danger,
    'source-shorted': shorted(facts, 'source-resistor'),
    'stage-shorted': shorted(facts, 'sink-resistor'),
    'depends-on-grounds': dependsOnGrounds(facts.judgement),
    'grounds-joined': groundsJoined(facts),
    'shield-open': shieldOpen(facts),
    'may-stay-on': mayStayOn(facts.judgement),
    split: split(facts.judgement.link),
    merged: merged(facts),
    'too-long': tooLong(facts.judgement.link),
    'plug-does-not-fit': sayList(facts.misfits.map(({ reason }) => reason)),
    'spare-pins': sparePins(facts),
    'pin-2-on-shell': pin2OnShell(facts),
    'foreign-supply': foreignSupply(facts.judgement.link),
    'crossed-inside': sayList(ofJacks(facts.judgement.link, exchangedWords)),
    'pin-2-tied': shieldTied(facts),
    'round-the-loop': sayList(ofJacks(facts.judgement.link, loopWords)),
    'other-resistor': otherResistors(facts.judgement.link),
    'other-supply': otherSupply(facts.judgement.link),
    practice: practice(facts.judgement.link),
  };
  return NOTES.flatMap((kind) => {
    const detail = details[kind];
    return detail ? [{ kind, detail }] : [];
  });
}

function dependsOnGrounds({ byGrounding: { separate, joined } }: Judgement): string | undefined {
  const label = (outcome: Outcome): string => outcomeWords(outcome).label.toLowerCase();
  return separate === joined
    ? undefined
    : `grounds separate: ${label(separate)}; joined elsewhere: ${label(joined)}`;
}

function shorted(
  { judgement: { link }, readings }: NoteGrounds,
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

/** Where the ground of the output goes; undefined where no contact of it has one. */
function shieldReach({ judgement: { link }, reach }: NoteGrounds): Reach | undefined {
  if (link.output.extras?.includes('shield-untied')) return undefined;
  const { shield } = styleEntry(link.output.style).lines;
  return reach.find(({ contact }) => contact === shield);
}

function groundsJoined(facts: NoteGrounds): string | undefined {
  const { branches } = facts.judgement.link;
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
  const { output, branches } = facts.judgement.link;
  const reach = shieldReach(facts);
  if (!reach) return untiedWords(output);
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

/** An LED between surely off and on at rest: this part may stay on, another of its kind not. */
function mayStayOn({ link, inputs }: Judgement): string | undefined {
  const lit = inputs.flatMap(({ kind, idle, worstIdle, on, off }, at) => {
    const say = sayBeside([worstIdle], [on, off]);
    return kind === 'current' && worstIdle >= off && idle < on
      ? [
          `${say(worstIdle)} through ${sayInput(at, link.branches.length)} at rest; surely off below ${say(off)}, on from ${say(on)}`,
        ]
      : [];
  });
  return sayList(lit);
}

function split({ branches }: Link): string | undefined {
  return branches.length > 1
    ? `${branches.length} inputs share one output; the standard allows one`
    : undefined;
}

function merged({ judgement: { link, inputs, decides }, together }: NoteGrounds): string | undefined {
  if (link.rivals === undefined) return undefined;
  const say = inputs[decides]?.kind === 'level' ? sayVolts : sayAmperes;
  const both = together ? ` While all send at once it gets ${say(together.value)}.` : '';
  return `${link.rivals.length + 1} outputs end on ${sayInput(decides, link.branches.length)}; told here while the others rest.${both} Their bytes fall into each other: put a merger in front`;
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

function pin2OnShell({ shellOnPin2 }: NoteGrounds): string | undefined {
  return shellOnPin2
    ? 'the standard wants the shield on pin 2 at both ends, never on the shell of a plug'
    : undefined;
}

/** Inputs whose shield contact is tied to ground, and whether these leads bring the output's ground there. */
function shieldTied(facts: NoteGrounds): string | undefined {
  const { branches } = facts.judgement.link;
  const brought = shieldReach(facts)?.inputs ?? [];
  return sayList(
    branches.flatMap(({ input }, branch) => {
      const { shield } = linesInside(input);
      const joins = brought.some((one) => one.branch === branch && one.contact === shield);
      return tiedWords(input, sayInput(branch, branches.length), joins) ?? [];
    }),
  );
}

/** What there is to say of each jack of a link. */
function ofJacks(
  { output, branches }: Link,
  say: (jack: Jack, place: string) => string | undefined | readonly string[],
): readonly string[] {
  return [
    say(output, 'the output'),
    ...branches.map(({ input }, at) => say(input, sayInput(at, branches.length))),
  ].flatMap((one) => one ?? []);
}

function foreignSupply(link: Link): string | undefined {
  const found = ofJacks(link, foreignWords);
  return found.length === 0
    ? undefined
    : `${sayList(found)}. It can damage devices and hurt people: take it off with everything switched off, and leave a supply that you do not know to someone qualified`;
}

/** A resistor of no more than this is told as left out, ohms (our choice: the least of the standard has 10). */
const LEFT_OUT_OHMS = 1;

/** The resistors that differ from the standard's. */
function otherResistors(link: Link): string | undefined {
  const words = ofJacks(link, (jack, place) =>
    offStandard(jack)
      .filter(({ name }) => name !== 'supplyVolts')
      .map(({ label, value, standard }) => {
        const is =
          value <= LEFT_OUT_OHMS ? `left out, or as good as that (${sayOhms(value)})` : sayOhms(value);
        return `the ${label} of ${place} is ${is}; the standard has ${sayOhms(standard)}`;
      }),
  );
  return sayList(words);
}

/** The supply that differs from the standard's two. */
function otherSupply({ output }: Link): string | undefined {
  const supply = offStandard(output).find(({ name }) => name === 'supplyVolts');
  return (
    supply &&
    `the ${supply.label} of the output is ${sayVolts(supply.value)}; the standard has ${STANDARD_VOLTS.map(sayVolts).join(' or ')}`
  );
}

function practice({ output, branches }: Link): string | undefined {
  const styles = [output, ...branches.map(({ input }) => input)].map(({ style }) => styleEntry(style));
  const loose = new Set(styles.filter(({ status }) => status === 'P').map(({ label }) => label));
  return loose.size === 0
    ? undefined
    : `${sayList([...loose])}: common practice, no standard; check the manual`;
}
