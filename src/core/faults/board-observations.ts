/** What a reader may look at or measure on the fault bench; every answer follows from the faulty board, readings by solving it. */
import { styleEntry } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import { SENDER_CHANNEL } from './board-faults.ts';
import type { BenchBoard } from './board-faults.ts';
import { workingBoard } from './board-state.ts';
import { arrivals } from './board-symptoms.ts';
import { atLead } from './lead-observations.ts';
import { look } from './observation.ts';
import type { Observation } from './observation.ts';

/** Everything that can be observed on a board; what it should show follows from the board with nothing wrong. */
export function observationsOf(board: BenchBoard): readonly Observation[] {
  const good = workingBoard(board);
  return [
    look('lamp sender', 'Look at the lamp of the sender.', ['lamp'], ({ senderOn }) =>
      senderOn ? 'lit' : 'dark',
    ),
    look(
      'outlet',
      'Look at the switch of the output.',
      ['jack'],
      ({ links }) => `set to ${styleEntry((links[0] as Link).output.style).label}`,
    ),
    look('filter', 'Look in the sender’s menu: does it send program changes?', ['display'], ({ filtered }) =>
      filtered ? 'filtered out' : 'sent',
    ),
    look('numbers', 'Compare the program number sent with the one shown.', ['display'], ({ programStep }) =>
      programStep === 0 ? 'the same' : programStep > 0 ? 'one too high' : 'one too low',
    ),
    look('bank', 'Look in the sender’s menu: does it send a bank first?', ['display'], ({ bankSent }) =>
      bankSent ? 'bank sent' : 'no bank',
    ),
    ...(board === 'chain'
      ? [
          {
            ...look(
              'thru menu',
              'Look in the menu of pedal 1: is its THRU on?',
              ['display'],
              ({ softThruOn }) => (softThruOn ? 'on' : 'off'),
            ),
            place: 'pedal 1',
          },
        ]
      : []),
    ...good.links.flatMap((link, at) => [...atPedal(at), ...atLead(link, at)]),
  ];
}

function atPedal(at: number): readonly Observation[] {
  const pedal = `pedal ${at + 1}`;
  return [
    look(`lamp ${pedal}`, `Look at the lamp of ${pedal}.`, ['lamp'], ({ pedalsOn }) =>
      pedalsOn[at] ? 'lit' : 'dark',
    ),
    look(
      `light ${pedal}`,
      `Watch the activity light of ${pedal} while presets are called.`,
      ['lamp'],
      (state) => {
        const arrival = arrivals(state)[at];
        return arrival === 'arrives' ? 'blinks' : arrival === 'nothing' ? 'stays dark' : 'comes and goes';
      },
    ),
    look(`jack ${pedal}`, `Look at which jack of ${pedal} the lead is in.`, ['jack'], ({ inOut }) =>
      inOut[at] ? 'in the OUT' : 'in the IN',
    ),
    look(
      `channel ${pedal}`,
      `Compare the channel of ${pedal} with the sender’s.`,
      ['display'],
      ({ channels }) => (channels[at] === SENDER_CHANNEL ? 'the same' : 'different'),
    ),
    look(
      `listen ${pedal}`,
      `Look in the menu of ${pedal}: does it listen to program changes?`,
      ['display'],
      ({ listening }) => (listening[at] ? 'yes' : 'no'),
    ),
    look(
      `answers ${pedal}`,
      `Send the preset on each channel in turn: which channel does ${pedal} answer on?`,
      [],
      (state) =>
        arrivals(state)[at] === 'nothing' || !state.listening[at] || state.filtered
          ? 'on none'
          : `on channel ${state.channels[at]}`,
    ),
  ];
}
