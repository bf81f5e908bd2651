/** Mistakes in times: of bits through a chain, of bytes on the wire, and of a press. Each is made by hand and met by its own name. */
import { describe, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectMistakes, numberAfter, numbersOf, rowsOf, tasksOf } from './school.ts';

/** 31.25 kbaud: 32 µs a bit (MIDI 1.0 Detailed Specification 4.2.1). */
const BIT_MICRO = 32;
/** Ten of them are a byte. */
const BYTE_MILLI = 0.32;

describe('who works out a chain', () => {
  const delays = (task: Task): readonly [on: number, off: number] => {
    const [on = NaN, off = NaN] = numbersOf(task, 'each input is on', 'and off');
    return [on, off];
  };
  const differ = (task: Task): number => Math.abs(delays(task)[0] - delays(task)[1]);

  it('and adds delays, takes one of them, or forgets an input, hears it', () => {
    const links = (task: Task): number => numberAfter(task.ask, /through/);
    expectMistakes(tasksOf('shift-after'), {
      'adds delays': (task) => links(task) * (delays(task)[0] + delays(task)[1]),
      'takes one delay': (task) => links(task) * Math.max(...delays(task)),
      'own input forgotten': (task) => (links(task) - 1) * differ(task),
      'one link': (task) => `${differ(task) / 1e3} ms`,
    });
  });

  it('and turns a lone bit the wrong way, or lets it be, hears it', () => {
    /** By how much the bit of the question grows in one link: a 0 is light. */
    const grows = (task: Task): number => {
      const [on, off] = delays(task);
      return task.ask.startsWith('A lone 0') ? off - on : on - off;
    };
    expectMistakes(tasksOf('lone-bit'), {
      'wrong way': (task) => BIT_MICRO - numberAfter(task.ask, /after/) * grows(task),
      unchanged: () => BIT_MICRO,
      'one link': (task) => BIT_MICRO + grows(task),
    });
  });

  it('and spends half a bit or a whole one, or rounds up, hears it', () => {
    const [shift, budget] = ['shift of one link', 'a receiver bears at most'];
    const most = (task: Task, room: number): number =>
      Math.floor(room / (numbersOf(task, shift ?? '')[0] ?? NaN));
    expectMistakes(tasksOf('longest-chain'), {
      'half a bit': (task) => `${most(task, BIT_MICRO / 2)} links`,
      'a whole bit': (task) => most(task, BIT_MICRO),
      'rounded up': (task) => most(task, numbersOf(task, budget ?? '')[0] ?? NaN) + 1,
    });
  });

  it('and forgets to read, to wait or to go on in a software THRU hears it', () => {
    const boxes = (task: Task): number => numberAfter(task.ask, /through/);
    const wait = (task: Task): number => numbersOf(task, 'and then waits')[0] ?? NaN;
    expectMistakes(tasksOf('later-by'), {
      'byte forgotten': (task) => boxes(task) * wait(task),
      'waiting forgotten': (task) => `${boxes(task) * BYTE_MILLI * 1e3} us`,
      'one box': (task) => BYTE_MILLI + wait(task),
    });
  });

  it('of hardware and software, and makes the wrong ones fresh, hears it', () => {
    const each = (task: Task): number => numbersOf(task, 'each input shifts edges by')[0] ?? NaN;
    const kinds = (task: Task): readonly string[] => [...rowsOf(task).values()].slice(1);
    const lastSoftware = (task: Task): number => kinds(task).lastIndexOf('software THRU');
    expectMistakes(tasksOf('mixed-thru'), {
      'software passes shifts on': (task) => kinds(task).length * each(task),
      'own input forgotten': (task) => (kinds(task).length - 2 - lastSoftware(task)) * each(task),
      'hardware makes edges fresh': each,
      'counts up to the software': (task) => (lastSoftware(task) + 1) * each(task),
    });
  });
});

describe('who adds up bytes', () => {
  it('of a list, and miscounts bits or bytes, hears it', () => {
    const count = (task: Task, what: string): number =>
      Number(new RegExp(`(\\d+) ${what}`).exec(task.ask)?.[1] ?? 0);
    const messages = (task: Task): number =>
      count(task, 'note-on') + count(task, 'program change') + count(task, 'control change');
    const bytes = (task: Task): number => 3 * messages(task) - count(task, 'program change');
    expectMistakes(tasksOf('list-time'), {
      'eight bits a byte': (task) => 0.8 * BYTE_MILLI * bytes(task),
      'a byte a message': (task) => BYTE_MILLI * messages(task),
      'three bytes each': (task) => 3 * BYTE_MILLI * messages(task),
      'bits for bytes': (task) => `${BIT_MICRO * bytes(task)} us`,
    });
  });

  it('of a clock, and miscounts it, hears it', () => {
    const tempo = (task: Task): number => numberAfter(task.ask, /tempo is/);
    const beats = (task: Task): number => (tempo(task) * numberAfter(task.ask, /leave in/)) / 60;
    const programs = (task: Task): number => Number(/In between, (\d+)/.exec(task.ask)?.[1] ?? 0);
    expectMistakes(tasksOf('clock-bytes'), {
      'one clock a beat': (task) => beats(task) + 2 * programs(task),
      'a minute for the time asked': (task) => `${24 * tempo(task) + 2 * programs(task)} bytes`,
      'clock of three bytes': (task) => 72 * beats(task) + 2 * programs(task),
      'bits for bytes': (task) => 10 * (24 * beats(task) + 2 * programs(task)),
      'programs left out': (task) => 24 * beats(task),
    });
  });
});

describe('who times a press', () => {
  /** Messages in words, pedal by pedal. */
  const sent = (task: Task): readonly (readonly string[])[] =>
    [...rowsOf(task)]
      .filter(([what]) => what !== 'a bank' && !what.startsWith('each pedal'))
      .map(([, told]) => told.split(', '));
  /** Bytes by the kind of a message: a bank is two control changes. */
  const bytes = (messages: readonly string[], ofBank = 6, ofProgram = 2): number =>
    messages.reduce(
      (sum, one) => sum + (one.startsWith('bank') ? ofBank : one.startsWith('program') ? ofProgram : 3),
      0,
    );
  const all = (task: Task): readonly string[] => sent(task).flat();

  it('and lets bytes go at once, counts too few or too many, or waits for the loading, hears it', () => {
    const load = (task: Task): number => numbersOf(task, 'each pedal then loads its sound in')[0] ?? NaN;
    expectMistakes(tasksOf('press-time'), {
      'loading time on the wire': (task) => BYTE_MILLI * bytes(all(task)) + load(task),
      'all at once': (task) => BYTE_MILLI * Math.max(...sent(task).map((one) => bytes(one))),
      'a bank as one control change': (task) => BYTE_MILLI * bytes(all(task), 3),
      'three bytes each': (task) => BYTE_MILLI * bytes(all(task), 6, 3),
      'eight bits a byte': (task) => 0.8 * BYTE_MILLI * bytes(all(task)),
    });
  });

  it('and saves too much by running status, or nothing, hears it', () => {
    /** What each status byte says: its kind and its channel, a bank twice. */
    const status = (task: Task): readonly (readonly [kind: string, channel: number])[] =>
      [...rowsOf(task)].flatMap(([what, told]) => {
        const kind = told.startsWith('program') ? 'C' : 'B';
        const one = [kind, numberAfter(what, /channel/)] as const;
        return told.startsWith('bank') ? [one, one] : [one];
      });
    const alike = (task: Task, part: 0 | 1): number =>
      status(task).filter((one, at, list) => at > 0 && one[part] === list[at - 1]?.[part]).length;
    const alikeInBoth = (task: Task): number =>
      status(task).filter((one, at, list) => at > 0 && one.join() === list[at - 1]?.join()).length;
    const inFull = (task: Task): number =>
      status(task).reduce((sum, [kind]) => sum + (kind === 'C' ? 2 : 3), 0);
    expectMistakes(tasksOf('running-saves'), {
      'saving across channels': (task) => alike(task, 0),
      'saving across kinds': (task) => alike(task, 1),
      'all but the first': (task) => status(task).length - 1,
      'nothing saved': () => 0,
      'counts what is left': (task) => inFull(task) - alikeInBoth(task),
    });
  });
});
