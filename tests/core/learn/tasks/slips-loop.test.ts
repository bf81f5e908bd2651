/** Mistakes in sums on the loop and its copper: made by hand from what the question tells, each is met by its own name. */
import { describe, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectMistakes, numberAfter, numberIn, numbersOf, rowsOf, tasksOf } from './school.ts';

/** What the question says that an LED keeps, volts. */
const LED = 1.4;

/** Supply, and the resistors in the source line, the sink line and the receiver. */
const loopOf = (task: Task) => {
  const [volts = 0, source = 0, sink = 0, series = 0] = numbersOf(
    task,
    'supply of the sender',
    'resistor in the source line',
    'resistor in the sink line',
    'resistor in the receiver',
  );
  return { volts, source, sink, series, all: source + sink + series };
};

/** Milliamperes of volts over ohms. */
const milli = (volts: number, ohms: number): number => (1e3 * volts) / ohms;

describe('who works out the current of a loop', () => {
  it('and forgets the LED or a resistor, or adds the LED, hears of just that', () => {
    expectMistakes(tasksOf('loop-current'), {
      'LED forgotten': (task) => milli(loopOf(task).volts, loopOf(task).all),
      'one resistor': (task) => milli(loopOf(task).volts - LED, loopOf(task).source),
      'receiver forgotten': (task) => {
        const { volts, source, sink } = loopOf(task);
        return `${milli(volts - LED, source + sink) / 1e3} A`;
      },
      'LED added': (task) => milli(loopOf(task).volts + LED, loopOf(task).all),
    });
  });

  it('with a second LED, and leaves out one of the two, hears which', () => {
    /** Volts of the LED that was added, and all the ohms. */
    const more = (task: Task): { readonly extra: number; readonly ohms: number } => {
      const second = rowsOf(task).get('the second input');
      return second === undefined
        ? { extra: numbersOf(task, 'the red LED keeps')[0] ?? NaN, ohms: loopOf(task).all }
        : { extra: numberAfter(second, /about/), ohms: loopOf(task).all + numberIn(second) };
    };
    expectMistakes(tasksOf('led-in-series'), {
      'the new LED forgotten': (task) => milli(loopOf(task).volts - LED, more(task).ohms),
      'nothing changed': (task) => milli(loopOf(task).volts - LED, loopOf(task).all),
      'half of it': (task) => milli(loopOf(task).volts - LED, loopOf(task).all) / 2,
      'no LED counted': (task) => milli(loopOf(task).volts, more(task).ohms),
    });
  });
});

describe('who looks for the missing resistor', () => {
  it('and leaves something in it that is there already hears what', () => {
    const wanted = (task: Task): number => numberAfter(task.ask, /carry/) / 1e3;
    expectMistakes(tasksOf('missing-resistor'), {
      'others not taken off': (task) => (loopOf(task).volts - LED) / wanted(task),
      'LED forgotten': (task) => {
        const { volts, source, sink } = loopOf(task);
        return volts / wanted(task) - source - sink;
      },
      'one not taken off': (task) => {
        const { volts, source } = loopOf(task);
        return `${((volts - LED) / wanted(task) - source) / 1e3} kohm`;
      },
    });
  });
});

describe('who works out copper', () => {
  const eachMetre = (task: Task): number => numberAfter(rowsOf(task).get('conductors') ?? '', /AWG,/);
  const metres = (task: Task): number => numberIn(rowsOf(task).get('length'));

  it('and counts one way, or the shield too, or one metre, hears it', () => {
    expectMistakes(tasksOf('ohms-of-lead'), {
      'one way': (task) => metres(task) * eachMetre(task),
      'shield counted': (task) => 3 * metres(task) * eachMetre(task),
      'length left out': (task) => 2 * eachMetre(task),
    });
  });

  it('and halves, doubles or multiplies where one conductor is to be divided, hears it', () => {
    const shown = (task: Task): number => numberAfter(task.ask, /shows/);
    expectMistakes(tasksOf('metres-from-ohms'), {
      halved: (task) => shown(task) / eachMetre(task) / 2,
      doubled: (task) => `${((2 * shown(task)) / eachMetre(task)) * 100} cm`,
      multiplied: (task) => shown(task) * eachMetre(task),
    });
  });

  it('and takes one way, volts for millivolts, or divides, hears it', () => {
    const amperes = (task: Task): number => numberAfter(task.ask, /carries/) / 1e3;
    const ohms = (task: Task): number => 2 * metres(task) * eachMetre(task);
    expectMistakes(tasksOf('volts-in-lead'), {
      'one way': (task) => `${(amperes(task) * ohms(task)) / 2} V`,
      volts: (task) => amperes(task) * ohms(task),
      divided: (task) => (1e6 * amperes(task)) / ohms(task),
    });
  });
});

describe('who asks where the output of an input stops', () => {
  const ohmsOf = (task: Task): number => {
    const told = rowsOf(task).get('pull-up');
    return numberIn(told) * (told?.includes('kilohm') === true ? 1e3 : 1);
  };
  /** Amperes of the LED and of the transistor, from the ratio. */
  const currents = (task: Task): readonly [led: number, transistor: number] => {
    const [led = 0, percent = 0] = numbersOf(task, 'current of the LED', 'transfer ratio at this current');
    return [led / 1e3, (led * percent) / 1e5];
  };

  it('and takes what the pull-up has, the current of the LED, or one end, hears it', () => {
    const supply = (task: Task): number => numbersOf(task, 'supply of the output side')[0] ?? NaN;
    expectMistakes(tasksOf('line-stops', [2, 3]), {
      'volts of the pull-up': (task) => ohmsOf(task) * currents(task)[1],
      'ratio forgotten': (task) => supply(task) - ohmsOf(task) * currents(task)[0],
      'all the way down': () => 0,
      'stays up': (task) => `${supply(task) * 1e3} mV`,
    });
  });
});
