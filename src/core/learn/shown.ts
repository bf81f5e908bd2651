/** Ways to do a thing, each with what the core makes of it as plain data: boards checked and timed, splits solved. */
import { checkBoard, hopTimings, pathReads, solveOutputs, timePress } from '../board/index.ts';
import { STANDARD_EDGE_BUDGET } from '../signal/index.ts';
import { boardFacts } from '../planner/index.ts';
import { boardGraph, pathsFrom } from '../plan/index.ts';
import { checkLink, linkWords, sayAmperesFinely } from '../verdict/index.ts';
import { boardFrom, splitFrom, type AuthoredBoard, type AuthoredSplit } from './boards.ts';
import { counted } from './say.ts';
import { sayTime } from './time.ts';

/** A row of what is shown; `amount` draws a bar, in any one unit. */
interface ShownRow {
  readonly name: string;
  readonly words: string;
  readonly amount?: number;
  readonly good: boolean;
}

/** One way, in full. */
export interface Shown {
  readonly label: string;
  readonly grade: 'good' | 'doubtful' | 'bad';
  readonly headline: string;
  readonly rows: readonly ShownRow[];
  /** What every bar is held against. */
  readonly bound?: { readonly amount: number; readonly words: string };
  readonly sentence: string;
}

/** A row without a fault, but for what is told of it. */
const row = (name: string, words: string, more: Partial<ShownRow> = {}): ShownRow => ({
  name,
  words,
  good: true,
  ...more,
});

/** The most boxes of a board that go silent with one other. */
export const mostSilent = ({ silentWithout }: ReturnType<typeof boardFacts>): number =>
  Math.max(0, ...silentWithout.map(({ silent }) => silent.length));

/** What the core finds wrong with a board, or that nothing stands in the way. */
export function shownCheck(label: string, authored: AuthoredBoard): Shown {
  const { findings, passes } = checkBoard(boardFrom(authored));
  const found = findings.filter(({ severity }) => severity !== 'note');
  const [first] = found;
  return {
    label,
    grade: passes ? (first ? 'doubtful' : 'good') : 'bad',
    headline: first ? first.what : 'Nothing stands in the way',
    rows: [],
    sentence: first
      ? `${first.why} ${first.mend}`
      : 'Each output feeds one input, and every device is reached.',
  };
}

/** What each device loses when one is off. */
export function shownSilence(label: string, authored: AuthoredBoard): Shown {
  const plan = boardFrom(authored);
  const facts = boardFacts(plan);
  const most = mostSilent(facts);
  const rows = plan.devices
    .filter(({ kind }) => kind !== 'controller')
    .map(({ name }) => {
      const silent = facts.silentWithout.find(({ device }) => device === name)?.silent ?? [];
      const [amount, good] = [silent.length, silent.length === 0];
      return row(`${name} off`, good ? 'no other' : silent.join(', '), { amount, good });
    });
  return {
    label,
    grade: most > 1 ? 'doubtful' : 'good',
    headline: `At worst ${most} of ${authored.pedals} go silent with one box`,
    rows,
    sentence: 'Each row names the pedals that hear nothing when that one box is off, besides the box itself.',
  };
}

/** How far edges have shifted at each device, against what a receiver has left. */
export function shownDepth(label: string, authored: AuthoredBoard): Shown {
  const plan = boardFrom(authored);
  const graph = boardGraph(plan);
  const solved = solveOutputs(plan, new Map());
  const rows = pathsFrom(graph, 0).flatMap((path, at): ShownRow[] => {
    const last = path && hopTimings(graph, path).at(-1);
    if (!path || !last) return [];
    const amount = Math.abs(last.shiftSeconds);
    const name = `${graph.devices[at]?.name ?? ''}, ${counted(path.length, 'link')} from the controller`;
    return [row(name, sayTime(amount), { amount, good: pathReads(graph, path, solved).at(-1) === true })];
  });
  const bad = rows.filter(({ good }) => !good).length;
  return {
    label,
    grade: bad === 0 ? 'good' : 'bad',
    headline: bad === 0 ? 'Every pedal is within the limit' : `${bad} of ${rows.length} are too deep`,
    rows,
    bound: {
      amount: STANDARD_EDGE_BUDGET.lateSeconds,
      words: `${sayTime(STANDARD_EDGE_BUDGET.lateSeconds)} is all that a receiver has left`,
    },
    sentence: `Edges shift by ${rows.at(-1)?.words ?? ''} on the way to the last pedal.`,
  };
}

/** Leads, delay, depth and silence of a board. */
export function shownFacts(label: string, authored: AuthoredBoard): Shown {
  const plan = boardFrom(authored);
  const facts = boardFacts(plan);
  const most = mostSilent(facts);
  return {
    label,
    grade: checkBoard(plan).passes ? 'good' : 'bad',
    headline: `${facts.leads} leads, ${counted(facts.hubs, 'hub')}`,
    rows: [
      row('longest way', counted(facts.deepestLinks, 'link')),
      row('worst delay', sayTime(facts.worstDelaySeconds)),
      row('silent at worst', String(most)),
    ],
    sentence: `With ${label}, the last pedal hears ${sayTime(facts.worstDelaySeconds)} late, and at worst ${most} go silent with one box.`,
  };
}

/** When each device of a press has the last message meant for it. */
export function shownPress(label: string, authored: AuthoredBoard): Shown {
  const timing = timePress(boardFrom(authored), { runningStatus: authored.runningStatus ?? false });
  const [warning] = timing.warnings;
  return {
    label,
    grade: warning === undefined ? 'good' : 'doubtful',
    headline: `${timing.bytes} bytes; the last is there after ${sayTime(timing.seconds ?? NaN)}`,
    rows: timing.arrivals.map(({ device, seconds }) =>
      row(device, sayTime(seconds ?? NaN), { amount: seconds ?? 0 }),
    ),
    sentence: [
      `Sent: ${timing.items.map(({ item, bytes }) => `${item.send} to ${item.device} in ${bytes.length} bytes`).join('; ')}.`,
      ...timing.warnings,
    ].join(' '),
  };
}

/** The current of each LED in a split, and what it needs. */
export function shownSplit(label: string, authored: AuthoredSplit): Shown {
  const verdict = checkLink(splitFrom(authored));
  const words = linkWords(verdict);
  const needed = verdict.inputs[verdict.decides]?.on ?? 0;
  return {
    label,
    grade: words.grade,
    headline: words.label,
    bound: { amount: needed, words: `${sayAmperesFinely(needed)} turns it on` },
    rows: verdict.inputs.map(({ active, on }, at) =>
      row(`${authored.parts[at] ?? ''} number ${at + 1}`, sayAmperesFinely(active), {
        amount: active,
        good: active >= on,
      }),
    ),
    sentence: [
      verdict.sentence,
      ...(authored.parts.length > 1 ? ['More than one input on an output: outside the standard.'] : []),
    ].join(' '),
  };
}
