/** The verdict in words: one line, then the way of the current step by step, then what to change. */
import { contactWords, styleEntry } from '../wiring/index.ts';
import type { Jack, Link } from '../wiring/index.ts';
import { changeOf } from './change.ts';
import type { Findings, Judge } from './findings.ts';
import type { InputVerdict } from './judge.ts';
import { linkWords, outcomeWords } from './outcomes.ts';
import { pathOf } from './path.ts';
import { sayBeside, sayContact, sayInput, sayList, sayVolts } from './speak.ts';
import { stepsAlong } from './steps.ts';
import type { Step } from './steps.ts';

/** A verdict in words: `sentence` says it in one line, `state` is the state the steps follow, `change` says what to do. */
export interface Explanation {
  readonly sentence: string;
  readonly state: 'idle' | 'active';
  readonly steps: readonly Step[];
  readonly change: string;
}

/** Explain a link that has been solved. `asked` is the link as it came: parts that are not known stay so in what to change. */
export function explain(asked: Link, found: Findings, judge: Judge): Explanation {
  const state = found.outcome === 'always-on' || found.outcome === 'inverted' ? 'idle' : 'active';
  return {
    sentence: sentenceOf(found),
    state,
    steps: stepsOf(found.link, found, state),
    change: changeOf(asked, found, judge),
  };
}

function sentenceOf(found: Findings): string {
  const { label } = linkWords(found);
  return found.danger === undefined
    ? `${label}${partsOf(found)}: ${tell(found)}.`
    : `${label}: ${found.danger}.`;
}

/** Which usual parts the outcome holds for, where the part is not known. */
function partsOf({ byPart, outcome, link, decides }: Findings): string {
  const others = byPart.filter((one) => one.outcome !== outcome);
  const part = link.branches[decides]?.input.part ?? '';
  if (byPart.length === 0 || (others.length === 0 && outcome !== 'flows')) return '';
  if (others.length === 0)
    return ` with all ${COUNTS[byPart.length] ?? byPart.length} usual parts; least margin with ${part}`;
  const words = [...new Set(others.map((one) => one.outcome))].map((other) => {
    const parts = others.filter((one) => one.outcome === other).map((one) => one.part);
    return `${outcomeWords(other).label.toLowerCase()} with ${sayList(parts)}`;
  });
  return ` with ${part} (${sayList(words)})`;
}

const COUNTS = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

function tell({ link, inputs, decides, outcome, notes, unsolved }: Findings): string {
  const { kind, idle, active, worstIdle, worstActive, on, off, reverseAmperes } = inputs[
    decides
  ] as InputVerdict;
  const current = kind === 'current';
  const who = sayInput(decides, link.branches.length);
  const say = current ? sayBeside([idle, active, worstIdle, worstActive], [on, off]) : sayVolts;
  const misfit = notes.find((note) => note.kind === 'plug-does-not-fit');
  switch (outcome) {
    case 'flows':
      return current
        ? `${say(active)} reaches ${who} while a 0 is sent, still ${say(worstActive)} with every tolerance at its worst; it turns on at ${say(on)}`
        : `${who} sees ${say(active)} while a 0 is sent (low is below ${say(on)}) and ${say(idle)} at rest`;
    case 'weak':
      return current
        ? `${say(active)} would do, but with every tolerance at its worst only ${say(worstActive)} is left, and ${who} turns on at ${say(on)}`
        : `right as designed, but with every tolerance at its worst ${who} sees ${say(worstActive)} while a 0 is sent (low is below ${say(on)}) and ${say(worstIdle)} at rest (high is above ${say(off)})`;
    case 'starved':
      return `only ${say(active)} flows through the LED of ${who}; it turns on at ${say(on)}`;
    case 'unclear':
      return `${who} sees ${say(idle)} at rest and ${say(active)} while a 0 is sent; low is below ${say(on)}, high above ${say(off)}`;
    case 'inverted':
      return `${who} is on at rest (${say(idle)}) and off while a 0 is sent (${say(active)})`;
    case 'always-on':
      return `${who} is on at rest (${say(idle)}) as well as while a 0 is sent (${say(active)}), so it never sees a byte`;
    case 'backwards':
      return `${say(reverseAmperes.active)} flows the wrong way, through the protection diode; the LED of ${who} stays dark`;
    case 'no-path':
      if (misfit) return misfit.detail;
      if (link.output.circuit === 'driver-off')
        return 'the output has no supply, so nothing drives a current';
      return current
        ? `almost no current flows through ${who} while a 0 is sent`
        : `${who} stays at ${say(active)}, high, whatever is sent`;
    case 'unsolved':
      return unsolved ?? 'no solution was found';
  }
}

function stepsOf(link: Link, found: Findings, state: 'idle' | 'active'): readonly Step[] {
  const branch = found.decides;
  const path = pathOf(found.readings[state], branch);
  const reachesInput = path.hops.some(
    ({ part: { owner } }) => owner.place === 'input' && owner.branch === branch,
  );
  const say = (text: string): Step => ({ text, spot: undefined, amperes: 0 });
  return [
    say(openingOf(link, state)),
    ...stepsAlong(link, path, found.readings[state]),
    ...(reachesInput || path.hops.length === 0
      ? []
      : [say(`None of it passes through ${sayInput(branch, link.branches.length)}.`)]),
    ...(reachesInput ? [] : whereItStops(link, found, branch)),
  ];
}

function openingOf({ output }: Link, state: 'idle' | 'active'): string {
  const line = styleEntry(output.style).family === 'loop' ? 'sink line' : 'signal line';
  if (output.circuit === 'driver-off')
    return 'The output has no supply: it drives nothing, whatever is sent.';
  if (state === 'active') return `A 0 is being sent: the output stage pulls the ${line} low.`;
  return output.circuit === 'driver-3v3'
    ? `The line is at rest: the output stage lets go of the ${line}.`
    : `The line is at rest: the output stage holds the ${line} high.`;
}

function whereItStops({ output, branches }: Link, found: Findings, branch: number): readonly Step[] {
  const input = branches[branch]?.input as Jack;
  const who = sayInput(branch, branches.length);
  const lines = styleEntry(output.style).lines;
  return (['source', 'sink'] as const).map((line): Step => {
    const contact = lines[line];
    const name = line === 'sink' && lines.source === undefined ? 'signal' : line;
    if (contact === undefined)
      return {
        text: `The output has no ${line} line: it can only set a voltage against its ground.`,
        spot: undefined,
        amperes: 0,
      };
    const reach = found.reach.find((one) => one.contact === contact);
    const there = (reach?.inputs ?? []).filter((one) => one.branch === branch);
    const shorts = (reach?.outputs ?? []).map((one) => sayContact(output, { contact: one }));
    const way =
      there.length === 0
        ? `leaves the output at ${contactWords(contact)} and stops: nothing takes it to ${who}.`
        : `goes from ${contactWords(contact)} of the output to ${sayList(there.map((one) => sayContact(input, one)))} of ${who}.`;
    const joined = shorts.length > 0 ? ` It is also joined to ${sayList(shorts)} of the output itself.` : '';
    return { text: `The ${name} line ${way}${joined}`, spot: { place: 'output', contact }, amperes: 0 };
  });
}
