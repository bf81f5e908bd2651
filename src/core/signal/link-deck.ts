/** Any link as a SPICE deck: at rest in one state, or in time with the bytes sent. */
import { spiceDeck } from '../circuit/index.ts';
import type { Drive, SpiceDeck } from '../circuit/index.ts';
import { DEFAULT_TIMING, linkCircuit } from '../wiring/index.ts';
import type { Grounding, Link, LinkCircuit, State, Timing } from '../wiring/index.ts';
import type { Waveform } from './waveform.ts';

/** Largest step asked of the program, seconds: a tenth of the shortest time constant that shows. */
const MOST_STEP_SECONDS = 0.1e-6;

/** A link at rest in one state, as a deck for its operating point. */
export function restDeck(link: Link, grounding: Grounding, state: State): SpiceDeck {
  const model = linkCircuit(link, grounding);
  const position = new Map(model.switching[state]);
  const elements = model.circuit.elements.map((element) =>
    element.kind === 'switch' && position.has(element.name)
      ? { ...element, closed: position.get(element.name) === 1 }
      : element,
  );
  return spiceDeck(
    { ...model.circuit, elements },
    {
      title: `Control link, ${state}, grounds ${grounding}`,
      comments: [
        `The output stage stands as it does when the line is ${state === 'idle' ? 'at rest' : 'sending a 0'}.`,
        'Closed switches are resistors of a milliohm; open ones are left out.',
        ...readingNotes(model),
      ],
    },
  );
}

/** A link in time, as a deck that sends a line. Edges must not be before 0 s. */
export function timeDeck(
  link: Link,
  grounding: Grounding,
  driven: Waveform,
  toSeconds: number,
  timing: Partial<Timing> = {},
): SpiceDeck {
  const full = { ...DEFAULT_TIMING, ...timing };
  const model = linkCircuit(link, grounding, full);
  return spiceDeck(model.circuit, {
    title: `Control link in time, grounds ${grounding}`,
    comments: [
      `Stage: rises in ${full.riseSeconds} s, falls in ${full.fallSeconds} s.`,
      'The capacitors are those between the wires of the lead, half of each at either end.',
      ...readingNotes(model),
    ],
    inTime: {
      drives: linkDrives(model, driven, full),
      toSeconds,
      stepSeconds: MOST_STEP_SECONDS,
      mostStepSeconds: MOST_STEP_SECONDS,
    },
  });
}

/** How a line drives a link's stage: an edge that comes while the stage still moves turns it where it stands. */
export function linkDrives(model: LinkCircuit, driven: Waveform, timing: Timing): readonly Drive[] {
  const { idle, active } = model.switching;
  return idle.map(([part, high], at) => {
    const low = active[at]?.[1] ?? high;
    const points: { seconds: number; value: number }[] = [];
    let from = driven.before ? high : low;
    driven.edges.forEach(({ seconds, level }, index) => {
      const lasts = level ? timing.riseSeconds : timing.fallSeconds;
      const to = level ? high : low;
      const next = driven.edges[index + 1]?.seconds ?? Infinity;
      points.push({ seconds, value: from });
      const share = Math.min(1, lasts > 0 ? (next - seconds) / lasts : 1);
      from = from + (to - from) * share;
      if (share === 1) points.push({ seconds: seconds + lasts, value: from });
    });
    return { part, points: points.length > 0 ? points : [{ seconds: 0, value: from }] };
  });
}

function readingNotes({ senses }: LinkCircuit): readonly string[] {
  return senses.map((sense, input) =>
    sense.kind === 'current'
      ? `Input ${input + 1} is on from ${sense.onAmperes} A through '${sense.led}', off below ${sense.offAmperes} A.`
      : `Input ${input + 1} is on below ${sense.lowVolts} V at '${sense.node}', off above ${sense.highVolts} V.`,
  );
}
