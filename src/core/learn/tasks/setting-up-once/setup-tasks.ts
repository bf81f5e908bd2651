/** Tasks on settings: who acts on a message, which channel, which setting is wrong. Who acts is asked of the core. */
import { saySent, whoActs, type SentKind, type SetPedal } from '../../set-up.ts';
import { PEDALS } from '../../boards.ts';
import { someOf } from '../chance.ts';
import { eachOf, inRows, met, whichOf } from '../forms.ts';
import { SENT_TASKS } from './sent-tasks.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

const CHANNELS = [1, 2, 3, 4, 7, 10] as const;

/** A pedal's menus in words. */
const sayMenus = ({ channel, omni, programs, clock }: SetPedal): string =>
  [
    `channel ${channel}`,
    `omni ${omni ? 'on' : 'off'}`,
    ...(programs ? [] : ['program changes off']),
    ...(clock ? [] : ['clock off']),
  ].join(', ');

/** What is sent, in words; a clock has no channel. */
function saySending(kind: SentKind, channel: number): string {
  return kind === 'clock' ? 'a clock' : `a ${kind} on channel ${channel}`;
}

/** Pedals as their menus may be set, one of them on the channel that is sent to. */
function drawnPedals(level: Level, channel: number, chance: Chance): readonly SetPedal[] {
  const names = someOf(PEDALS, level < 2 ? 3 : 4, chance);
  const omni = level < 2 ? chance.pick([-1, 1, 2]) : chance.pick([1, 2, 3]);
  return chance.shuffled(
    names.map((name, at): SetPedal => ({
      name,
      channel: at === 0 ? channel : chance.pick(CHANNELS),
      omni: at === omni,
      programs: level < 3 || chance.pick([true, true, false]),
      clock: chance.pick([true, true, false]),
    })),
  );
}

const MEANT_SAID = {
  'a clock has a channel': 'A clock has no channel. It reaches every pedal that follows the clock.',
  'omni forgotten': 'A pedal in omni mode acts on every channel, whatever its own is.',
  'shut out forgotten': 'A menu can shut out program changes. Such a pedal hears them and lets them pass.',
  'all hear, so all act': 'All hear it. But a menu decides on what a pedal acts.',
  'none is meant': 'At least one of them is set to act on this. Go through the menus again.',
};

function whoIsMeant(level: Level, chance: Chance): Drawn {
  const kind = chance.turn<SentKind>(
    level < 2 ? ['program change', 'clock'] : ['program change', 'clock', 'control change'],
  );
  const channel = chance.pick(CHANNELS);
  const pedals = drawnPedals(level, channel, chance);
  const acts = whoActs(pedals, kind, channel);
  const acting = acts.flatMap(({ name, acts: right }) => (right ? [name] : []));
  const isClock = kind === 'clock';
  const listens = (one: SetPedal): boolean => one.omni || one.channel === channel;
  return {
    ask: `The foot controller sends ${saySending(kind, channel)}. Which pedals act on it?`,
    shows: inRows(pedals.map((pedal) => [pedal.name, sayMenus(pedal)])),
    ...eachOf(pedals, chance, {
      text: ({ name }) => name,
      right: (one) => acting.includes(one.name),
      said: MEANT_SAID,
      ticks: {
        'omni forgotten':
          !isClock && ((one) => one.channel === channel && (kind !== 'program change' || one.programs)),
        'shut out forgotten': !isClock && listens,
        'all hear, so all act': () => true,
        'none is meant': () => false,
        // None is told: so it would be for those alone that listen to every channel.
        'a clock has a channel': isClock && (({ omni }) => omni),
      },
    }),
    hints: [
      'Every pedal hears every byte. Its menus decide on what it acts.',
      isClock ? 'A clock has no channel.' : 'Its own channel counts, but with omni on every channel does.',
      isClock ? 'Which pedals follow the clock?' : 'Then look for what a menu shuts out.',
    ],
    steps: [
      `Sent: ${saySent(kind, channel)}. ${acts.map(({ name, because }) => `${name}: ${because}`).join('. ')}.`,
      `Acting: ${acting.join(', ') || 'none'}.`,
    ],
  };
}

const FREE_SAID = {
  'omni of another forgotten': 'Another pedal has omni on: it would act on that channel too.',
  'a channel for two': 'Another pedal is on that channel. Both would change together.',
  'omni on a board of several': 'With omni on it acts on what is meant for the others.',
  'sees a hindrance': 'Every other pedal keeps to its own channel. One of these settings does it.',
};

function freeChannel(level: Level, chance: Chance): Drawn {
  const fresh = chance.turn(PEDALS);
  const [taken = 1, second = 2, free = 3, spare = 4] = chance.shuffled(CHANNELS);
  const names = chance.shuffled(PEDALS.filter((name) => name !== fresh)).slice(0, 2);
  const blocked = level >= 2 && chance.pick([true, false]);
  const others = names.map((name, at): SetPedal => ({
    name,
    channel: at === 0 ? taken : second,
    omni: blocked && at === 1,
    programs: true,
    clock: true,
  }));
  /** Whether a setting of the fresh pedal lets it be called alone, and lets the others be called without it. */
  const alone = (channel: number, omni: boolean): boolean => {
    const all = [...others, { name: fresh, channel, omni, programs: true, clock: true }];
    const acting = (to: number): readonly string[] =>
      whoActs(all, 'program change', to).flatMap(({ name, acts }) => (acts ? [name] : []));
    return acting(channel).join() === fresh && others.every((one) => !acting(one.channel).includes(fresh));
  };
  const settings = {
    'omni of another forgotten': [`Channel ${free}, omni off`, alone(free, false)],
    'a channel for two': [`Channel ${taken}, omni off`, alone(taken, false)],
    'omni on a board of several': [`Channel ${spare}, omni on`, alone(spare, true)],
    'sees a hindrance': ['None yet: another pedal has to be set first', blocked],
  } as const;
  const slips = Object.keys(settings) as (keyof typeof settings)[];
  const serves = slips.find((slip) => settings[slip][1]) ?? 'sees a hindrance';
  return {
    ask: `'${fresh}' is new on the board. Program changes are to change it alone, and those for the others are to leave it as it is. Which setting does that?`,
    shows: inRows(others.map((pedal) => [pedal.name, sayMenus(pedal)])),
    ...whichOf(
      slips,
      serves,
      (slip) => settings[slip][0],
      (slip) => met(FREE_SAID, slip),
      chance,
    ),
    hints: [
      'A pedal is called alone when no other acts on its channel.',
      'Which channels are taken? Is any pedal in omni mode?',
      'Omni on the new one lets it act on everything; omni on another lets that one act too.',
    ],
    steps: [
      others.some(({ omni }) => omni)
        ? `'${names[1] ?? ''}' has omni on and acts on every channel.`
        : `Taken are the channels ${others.map(({ channel }) => channel).join(' and ')}, and omni is off.`,
      `${settings[serves][0]}.`,
    ],
  };
}

/** Settings that may be wrong in a pedal that is to act on everything for its channel. */
const WRONG = {
  channel: 'Its channel is another one',
  programs: 'Program changes are shut out',
  clock: 'It does not follow the clock',
  omni: 'Omni is on',
  lead: 'Its lead is broken',
} as const;
type Wrong = keyof typeof WRONG;

const SEEN: readonly (readonly [what: string, kind: SentKind, own: boolean])[] = [
  ['a program change on its channel', 'program change', true],
  ['a control change on its channel', 'control change', true],
  ['a program change on another channel', 'program change', false],
  ['the clock', 'clock', true],
];

/** What a pedal does with each of these where one setting is wrong. */
function seenWith(wrong: Wrong, own: number, other: number): readonly boolean[] {
  const pedal: SetPedal = {
    name: 'pedal',
    channel: wrong === 'channel' ? own + 1 : own,
    omni: wrong === 'omni',
    programs: wrong !== 'programs',
    clock: wrong !== 'clock',
  };
  return SEEN.map(
    ([, kind, isOwn]) => wrong !== 'lead' && whoActs([pedal], kind, isOwn ? own : other)[0]?.acts === true,
  );
}

const SAID_TO_WRONG: Readonly<Record<Wrong, string>> = {
  channel: 'On another channel it would miss control changes too, and keep the clock.',
  programs: 'With program changes shut out it would still act on control changes.',
  clock: 'A clock that is not followed changes nothing for other messages.',
  omni: 'With omni on it would act on other channels too.',
  lead: 'With a broken lead nothing would arrive, not even the clock.',
};

function wrongSetting(level: Level, chance: Chance): Drawn {
  const wrong = chance.turn<Wrong>(['channel', 'programs', 'omni', 'clock', 'lead']);
  const own = chance.pick([1, 2, 5, 9]);
  const name = chance.pick(PEDALS);
  const acts = seenWith(wrong, own, own + 3);
  const shown = SEEN.map(([what], at) => [what, acts[at] ? 'it acts' : 'it does nothing'] as const);
  const others = (Object.keys(WRONG) as Wrong[]).filter((one) => one !== wrong);
  return {
    ask: `'${name}' is meant to have channel ${own}, omni off, and to take all messages. This is what it does. Which one thing is wrong?`,
    shows: inRows(level === 3 ? chance.shuffled(shown) : shown),
    ...whichOf<Wrong>(
      [wrong, ...(level < 2 ? someOf(others, 3, chance) : others)],
      wrong,
      (one) => WRONG[one],
      (one) => [one === 'lead' ? 'lead blamed first' : `says ${one}`, SAID_TO_WRONG[one]],
      chance,
    ),
    hints: [
      'Whatever arrives tells you that the lead is good.',
      'A clock has no channel. Program and control changes have.',
      'Take each answer in turn: what would the pedal then do with the four messages?',
    ],
    steps: [
      `${SEEN.map(([what], at) => `${what}: ${acts[at] ? 'acts' : 'nothing'}`).join('; ')}.`,
      `${WRONG[wrong]}.`,
    ],
  };
}

/** The tasks of the lesson. */
export const SETUP_TASKS: readonly TaskKind[] = [
  { kind: 'who-is-meant', title: 'Who acts on it?', draw: whoIsMeant },
  { kind: 'free-channel', title: 'A setting for a new pedal', draw: freeChannel },
  ...SENT_TASKS,
  { kind: 'wrong-setting', title: 'Which setting is wrong?', draw: wrongSetting },
];
