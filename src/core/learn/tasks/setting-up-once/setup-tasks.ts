/** Tasks on settings: who acts on a message, which channel, which setting is wrong. Who acts is asked of the core. */
import { saySent, whoActs, type SentKind, type SetPedal } from '../../set-up.ts';
import { PEDALS } from '../../boards.ts';
import { eachThat, oneOf } from '../forms.ts';
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
  const names = chance.shuffled(PEDALS).slice(0, level < 2 ? 3 : 4);
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

/** What known mistakes would tick. */
function meantSlips(
  pedals: readonly SetPedal[],
  kind: SentKind,
  channel: number,
): Parameters<typeof eachThat>[1] {
  const named = (test: (pedal: SetPedal) => boolean): ((text: string) => boolean) => {
    const names = pedals.filter(test).map(({ name }) => name);
    return (text) => names.includes(text);
  };
  return [
    ...(kind === 'clock'
      ? [
          {
            slip: 'a clock has a channel',
            ticks: named((one) => one.omni || one.channel === channel),
            says: 'A clock has no channel. It reaches every pedal that follows the clock.',
          },
        ]
      : [
          {
            slip: 'omni forgotten',
            ticks: named((one) => one.channel === channel && (kind !== 'program change' || one.programs)),
            says: 'A pedal in omni mode acts on every channel, whatever its own is.',
          },
          {
            slip: 'shut out forgotten',
            ticks: named((one) => one.omni || one.channel === channel),
            says: 'A menu can shut out program changes. Such a pedal hears them and lets them pass.',
          },
        ]),
    {
      slip: 'all hear, so all act',
      ticks: () => true,
      says: 'All hear it. But a menu decides on what a pedal acts.',
    },
    {
      slip: 'none is meant',
      ticks: () => false,
      says: 'At least one of them is set to act on this. Go through the menus again.',
    },
  ];
}

function whoIsMeant(level: Level, chance: Chance): Drawn {
  const kind = chance.turn<SentKind>(
    level < 2 ? ['program change', 'clock'] : ['program change', 'clock', 'control change'],
  );
  const channel = chance.pick(CHANNELS);
  const pedals = drawnPedals(level, channel, chance);
  const acts = whoActs(pedals, kind, channel);
  return {
    ask: `The foot controller sends ${saySending(kind, channel)}. Which pedals act on it?`,
    shows: { shows: 'rows', rows: pedals.map((pedal) => [pedal.name, sayMenus(pedal)]) },
    ...eachThat(
      acts.map(({ name, acts: right }) => ({ text: name, right })),
      meantSlips(pedals, kind, channel),
      chance,
    ),
    hints: [
      'Every pedal hears every byte. Its menus decide on what it acts.',
      kind === 'clock'
        ? 'A clock has no channel.'
        : 'Its own channel counts, but with omni on every channel does.',
      kind === 'clock' ? 'Which pedals follow the clock?' : 'Then look for what a menu shuts out.',
    ],
    steps: [
      `Sent: ${saySent(kind, channel)}. ${acts.map(({ name, because }) => `${name}: ${because}`).join('. ')}.`,
      `Acting: ${acts.flatMap(({ name, acts: right }) => (right ? [name] : [])).join(', ') || 'none'}.`,
    ],
  };
}

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
  const settings = [
    { text: `Channel ${free}, omni off`, works: alone(free, false), slip: 'omni of another forgotten' },
    { text: `Channel ${taken}, omni off`, works: alone(taken, false), slip: 'a channel for two' },
    { text: `Channel ${spare}, omni on`, works: alone(spare, true), slip: 'omni on a board of several' },
    { text: 'None yet: another pedal has to be set first', works: blocked, slip: 'sees a hindrance' },
  ];
  const says: Readonly<Record<string, string>> = {
    'omni of another forgotten': 'Another pedal has omni on: it would act on that channel too.',
    'a channel for two': 'Another pedal is on that channel. Both would change together.',
    'omni on a board of several': 'With omni on it acts on what is meant for the others.',
    'sees a hindrance': 'Every other pedal keeps to its own channel. One of these settings does it.',
  };
  return {
    ask: `'${fresh}' is new on the board. Program changes are to change it alone, and those for the others are to leave it as it is. Which setting does that?`,
    shows: { shows: 'rows', rows: others.map((pedal) => [pedal.name, sayMenus(pedal)]) },
    ...oneOf(
      settings.map(({ text, works, slip }) =>
        works ? { text, right: true } : { text, slip, says: says[slip] ?? '' },
      ),
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
      `${settings.find(({ works }) => works)?.text ?? ''}.`,
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
  const shown = SEEN.map(([what], at): readonly [string, string] => [
    what,
    acts[at] ? 'it acts' : 'it does nothing',
  ]);
  const asked =
    level < 2
      ? chance.shuffled((Object.keys(WRONG) as Wrong[]).filter((one) => one !== wrong)).slice(0, 3)
      : (Object.keys(WRONG) as Wrong[]).filter((one) => one !== wrong);
  return {
    ask: `'${name}' is meant to have channel ${own}, omni off, and to take all messages. This is what it does. Which one thing is wrong?`,
    shows: { shows: 'rows', rows: level === 3 ? chance.shuffled(shown) : shown },
    ...oneOf(
      [
        { text: WRONG[wrong], right: true },
        ...asked.map((one) => ({
          text: WRONG[one],
          slip: one === 'lead' ? 'lead blamed first' : `says ${one}`,
          says: SAID_TO_WRONG[one],
        })),
      ],
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
