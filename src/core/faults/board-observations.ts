/** What a reader may look at or measure on the fault bench; every answer follows from the faulty board, readings by solving it. */
import { contactWords, familyOf } from '../wiring/index.ts';
import type { Contact } from '../wiring/index.ts';
import type { Jack, Lead, Link } from '../wiring/index.ts';
import { makeJack } from '../wiring/index.ts';
import { styleEntry } from '../wiring/index.ts';
import { leadNode } from '../wiring/index.ts';
import { linkCircuit } from '../wiring/index.ts';
import { arrivals, symptomsOf } from './board-symptoms.ts';
import { workingBoard } from './board-faults.ts';
import type { BenchBoard, BoardState } from './board-faults.ts';
import { meterProfile } from '../readings/index.ts';
import { setUp, takeReading } from '../readings/index.ts';
import type { Power } from '../readings/index.ts';
import type { Reading } from '../readings/index.ts';
import { readJack, readLead } from '../readings/index.ts';

/** One thing to look at or to measure. `effort` orders equals: 1 look, 2 swap or unplug, 3 measure. */
export interface Observation {
  readonly id: string;
  readonly words: string;
  readonly effort: 1 | 2 | 3;
  /** What is seen, in words, or a reading. */
  readonly see: (state: BoardState) => string | Reading;
}

const PROFILE = meterProfile('usual');

/** Everything that can be observed on a board; what it should show follows from the board with nothing wrong. */
export function observationsOf(board: BenchBoard): readonly Observation[] {
  const good = workingBoard(board);
  const look = (id: string, words: string, see: Observation['see']): Observation => ({
    id,
    words,
    effort: 1,
    see,
  });
  return [
    look('lamp sender', 'Look at the lamp of the sender.', ({ senderOn }) => (senderOn ? 'lit' : 'dark')),
    look('outlet', 'Look at the switch of the outlet.', ({ outletSet }) => `set to ${outletSet}`),
    look('filter', 'Look in the sender’s menu: does it send program changes?', ({ filtered }) =>
      filtered ? 'filtered out' : 'sent',
    ),
    look('numbers', 'Compare the program number sent with the one shown.', ({ programStep }) =>
      programStep === 0 ? 'the same' : 'one apart',
    ),
    look('bank', 'Look in the sender’s menu: does it send a bank first?', ({ bankSent }) =>
      bankSent ? 'bank sent' : 'no bank',
    ),
    ...(board === 'chain'
      ? [
          look('thru menu', 'Look in the menu of pedal 1: is its THRU on?', ({ softThruOn }) =>
            softThruOn ? 'on' : 'off',
          ),
        ]
      : []),
    ...good.links.flatMap((link, at) => [...atPedal(at), ...atLead(link, at)]),
  ];
}

function atPedal(at: number): readonly Observation[] {
  const pedal = `pedal ${at + 1}`;
  const look = (id: string, words: string, see: Observation['see']): Observation => ({
    id: `${id} ${pedal}`,
    words,
    effort: 1,
    see,
  });
  return [
    look('lamp', `Look at the lamp of ${pedal}.`, ({ pedalsOn }) => (pedalsOn[at] ? 'lit' : 'dark')),
    look('light', `Watch the activity light of ${pedal} while presets are called.`, (state) => {
      const arrival = arrivals(state)[at];
      return arrival === 'arrives' ? 'blinks' : arrival === 'nothing' ? 'stays dark' : 'comes and goes';
    }),
    look('jack', `Look at which jack of ${pedal} the lead is in.`, ({ inOut }) =>
      inOut[at] ? 'in the OUT' : 'in the IN',
    ),
    look('channel', `Compare the channel of ${pedal} with the sender’s.`, ({ channelRight }) =>
      channelRight[at] ? 'the same' : 'different',
    ),
    look('listen', `Look in the menu of ${pedal}: does it listen to program changes?`, ({ listening }) =>
      listening[at] ? 'yes' : 'no',
    ),
  ];
}

function atLead(good: Link, at: number): readonly Observation[] {
  const name = `lead ${at + 1}`;
  const lines = goodLines(good);
  const lead = (state: BoardState): Lead => (state.links[at] as Link).branches[0]!.leads[0]!;
  const ends = (line: 'source' | 'sink'): string =>
    `${contactWords(lines[line].from)} to ${contactWords(lines[line].to)}`;
  return [
    {
      id: `plugs ${name}`,
      words: `Look at the phone plugs of ${name}: two black rings, or one?`,
      effort: 1,
      see: (state) =>
        [lead(state).from, lead(state).to].some(({ connector }) => familyOf(connector) === 'ts')
          ? 'one ring: a TS plug'
          : 'two rings on each',
    },
    {
      id: `swap ${name}`,
      words: `Put a proved lead in the place of ${name} and try again.`,
      effort: 2,
      see: (state) => {
        const healed: BoardState = {
          ...state,
          cold: state.cold.map((one, place) => (place === at ? undefined : one)),
          links: state.links.map((link, place) =>
            place === at
              ? { ...link, branches: [{ ...link.branches[0]!, leads: good.branches[0]!.leads }] }
              : link,
          ),
        };
        const changed = symptomsOf(healed).join() !== symptomsOf(state).join();
        return changed ? 'it changes' : 'no change';
      },
    },
    ...(['source', 'sink'] as const).map((line): Observation => ({
      id: `continuity ${line} ${name}`,
      words: `Unplug ${name} at both ends; continuity from ${ends(line)}, then move the plugs.`,
      effort: 3,
      see: (state) => {
        const [from, to] = [
          metal(lead(state), 'from', lines[line].from),
          metal(lead(state), 'to', lines[line].to),
        ];
        if (from === undefined || to === undefined) return 'there is no such contact';
        const { shows } = readLead(
          lead(state),
          'continuity',
          { side: 'from', contact: from },
          { side: 'to', contact: to },
          PROFILE,
        );
        return shows === 'beep' && state.cold[at] === line
          ? 'flickers'
          : shows === 'beep'
            ? 'beeps'
            : 'silent';
      },
    })),
    {
      id: `continuity across ${name}`,
      words: `Unplug ${name} at both ends; continuity between ${contactWords(lines.source.from)} and ${contactWords(lines.sink.from)} of one plug.`,
      effort: 3,
      see: (state) => {
        const [a, b] = [
          metal(lead(state), 'from', lines.source.from),
          metal(lead(state), 'from', lines.sink.from),
        ];
        if (a === undefined || b === undefined) return 'there is no such contact';
        const { shows } = readLead(
          lead(state),
          'continuity',
          { side: 'from', contact: a },
          { side: 'from', contact: b },
          PROFILE,
        );
        return shows === 'beep' ? 'beeps' : 'silent';
      },
    },
    volts(good, at, 'idle'),
    volts(good, at, 'clock'),
    {
      id: `diode pedal ${at + 1}`,
      words: `Pedal ${at + 1} off and unplugged: diode test of the jack that ${name} was in, red on its source line, black on its sink line.`,
      effort: 3,
      see: (state) => {
        const input = (state.links[at] as Link).branches[0]!.input;
        const jack: Jack = state.inOut[at] ? outBeside(input) : input;
        return readJack(
          { kind: 'control', jack },
          { meter: 'diode', power: 'off', red: lines.source.to, black: lines.sink.to },
          PROFILE,
        );
      },
    },
  ];
}

/** An output jack on the same connector: where a lead ends up that is put into OUT. */
function outBeside(input: Jack): Jack {
  return makeJack('out', input.connector, styleEntry(input.style).forOutput ? input.style : 'type-a');
}

/** Contacts of source and sink at both ends of a lead that is right. */
function goodLines(
  link: Link,
): Readonly<Record<'source' | 'sink', { readonly from: Contact; readonly to: Contact }>> {
  const at = (line: 'source' | 'sink'): { from: Contact; to: Contact } => ({
    from: styleEntry(link.output.style).lines[line] as Contact,
    to: styleEntry(link.branches[0]!.input.style).lines[line] as Contact,
  });
  return { source: at('source'), sink: at('sink') };
}

/** The metal of a plug where a contact should be: on a TS plug the long sleeve lies where a ring would. */
function metal(lead: Lead, side: 'from' | 'to', contact: Contact): Contact | undefined {
  if (familyOf(lead[side].connector) === 'ts' && contact === 'ring') return 'sleeve';
  return contact;
}

/** Volts between source and sink on the free plug of a lead, sender on; at rest from source to shield, with clock source to sink. */
function volts(good: Link, at: number, power: Exclude<Power, 'off'>): Observation {
  const input = good.branches[0]!.input;
  const { source, sink, shield } = styleEntry(input.style).lines as Record<
    'source' | 'sink' | 'shield',
    Contact
  >;
  const [red, black] = power === 'idle' ? [source, shield] : [source, sink];
  const name = `lead ${at + 1}`;
  return {
    id: `volts ${power} ${name}`,
    words: `DC volts on the free plug of ${name}, ${power === 'idle' ? 'nothing sent' : 'clock running'}: red on ${contactWords(red)}, black on ${contactWords(black)}.`,
    effort: 3,
    see: (state) => {
      const link = state.links[at] as Link;
      const lead = link.branches[0]!.leads[0]!;
      const [plus, minus] = [metal(lead, 'to', red) as Contact, metal(lead, 'to', black) as Contact];
      if (plus === minus) return { meter: 'volts', shows: 'value', value: 0 };
      const { parts, switching } = linkCircuit(link, 'separate');
      // The touches of the free plug are left: nothing stands behind them any more.
      const alone = parts.filter(({ owner }) => owner.place !== 'input');
      const on = at === 0 ? state.senderOn : state.pedalsOn[0] === true;
      const sends = at === 0 || (state.thruAlive && state.softThruOn && arrivals(state)[0] !== 'nothing');
      const placement = {
        meter: 'volts',
        power: on ? (sends ? power : 'idle') : 'off',
        red: leadNode(0, 0, 'to', plus),
        black: leadNode(0, 0, 'to', minus),
      } as const;
      return takeReading(setUp({ parts: alone, switching }, placement, PROFILE));
    },
  };
}
