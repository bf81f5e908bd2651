/** The second solver on the inside of inputs: Ohm's law, half a bit, and which way a diode lets current through. */
import { describe, it } from 'vitest';
import type { Task } from '../../../../src/core/learn/index.ts';
import { expectRight, numberIn, optionOf, rowsOf, tasksOf } from './school.ts';

/** '2.2 kilohm' in ohms. */
const ohmsIn = (text: string | undefined): number =>
  numberIn(text) * (text?.includes('kilohm') === true ? 1e3 : 1);

/** Volts at which an output stops that takes so many milliamperes through so many ohms; it cannot go below ground. */
const stopsAt = (volts: number, ohms: number, milliamperes: number): number =>
  Math.max(0, volts - (ohms * milliamperes) / 1e3);

/** Half of the 32 µs of a bit at 31.25 kbaud (MIDI 1.0). */
const HALF_A_BIT = 16;

/** What an output does by how low it comes and by how much a 0 grows; no number means that none comes out. */
function heardAt(lowVolts: number, growsMicro: number): 'small' | 'large' | 'good' {
  if (lowVolts > 2.5) return 'small';
  return growsMicro > HALF_A_BIT ? 'large' : 'good';
}

describe('the output side of an input', () => {
  it('stops at the supply less the volts of the pull-up', () => {
    for (const task of tasksOf('line-stops')) {
      const rows = rowsOf(task);
      const direct = rows.get('the transistor can take');
      const takes =
        direct === undefined
          ? (numberIn(rows.get('current of the LED')) *
              numberIn(rows.get('transfer ratio at this current'))) /
            100
          : numberIn(direct);
      const low = stopsAt(
        numberIn(rows.get('supply of the output side')),
        ohmsIn(rows.get('pull-up')),
        takes,
      );
      expectRight(task, `${low.toFixed(2)} V`);
    }
  });

  it('has too small a pull-up where it hangs above the middle, and too large a one where a 0 grows by more than half a bit', () => {
    for (const task of tasksOf('judge-pull-up')) {
      const rows = rowsOf(task);
      const pullUp = ohmsIn(/pull-up of ([\d.]+ \w+)/.exec(task.ask)?.[1]);
      const direct = rows.get('the output comes down to');
      const low =
        direct === undefined
          ? stopsAt(5, pullUp, numberIn(rows.get('the transistor can take')))
          : numberIn(direct);
      const grows = Number(/\d+/.exec(rows.get('a 0 grows by') ?? '')?.[0] ?? 0);
      const says = { small: 'Too small', large: 'Too large', good: 'Good' }[heardAt(low, grows)];
      expectRight(task, optionOf(task, says));
    }
  });

  it('misses a sender with too little light or too much, and else the lead is to blame', () => {
    for (const task of tasksOf('one-sender')) {
      const told = [...rowsOf(task).values()][1] ?? '';
      const low = numberIn(/down to ([\d.]+)/.exec(told)?.[1]);
      const grows = Number(/grows by (\d+)/.exec(told)?.[1] ?? 0);
      const says = { small: 'Too little', large: 'Too much', good: 'Neither' }[heardAt(low, grows)];
      expectRight(task, optionOf(task, says));
    }
  });
});

describe('a late input', () => {
  /** Bits as they are sent, start bit first; a 1 after a 0 is late. */
  function heard(task: Task): string {
    if (task.shows?.shows !== 'bits') throw new Error('task: needs bits');
    const { levels } = task.shows;
    const each = Number(/each of which/.test(task.ask)) + 1;
    const late = each * Number(/([\d.]+) µs late/.exec(task.ask)?.[1]);
    const seen = levels.map((level, at) => level && (late < HALF_A_BIT || levels[at - 1] === true));
    const byte = seen.slice(1, 9).reduce((sum, bit, at) => sum + (bit ? 2 ** at : 0), 0);
    return byte.toString(16).padStart(2, '0');
  }

  it('loses each 1 after a 0 where it is late by more than half a bit', () => {
    for (const task of tasksOf('late-byte')) expectRight(task, heard(task));
  });
});

describe('LEDs and diodes', () => {
  it('in a row share the volts: what two LEDs leave, over all resistors', () => {
    for (const task of tasksOf('led-in-series')) {
      const rows = rowsOf(task);
      const ohms = ['resistor in the source line', 'resistor in the sink line', 'resistor in the receiver'];
      const second = rows.get('the second input');
      const all =
        ohms.reduce((sum, name) => sum + numberIn(rows.get(name)), 0) + (second ? numberIn(second) : 0);
      const more = second
        ? numberIn(/about ([\d.]+) V/.exec(second)?.[1])
        : numberIn(rows.get('the red LED keeps'));
      const left = numberIn(rows.get('supply of the sender')) - numberIn(rows.get('the LED keeps')) - more;
      expectRight(task, `${((left / all) * 1e3).toFixed(2)} mA`);
    }
  });

  it('light by the way the current comes and the way each points', () => {
    for (const { ask, ...task } of tasksOf('diode-beside')) {
      const backwards = ask.includes('swapped');
      const diode = ask.includes('no diode') ? undefined : ask.includes('same way') ? 'same' : 'other';
      const says = backwards
        ? diode === 'other'
          ? 'It stays dark: the diode carries'
          : 'It stays dark, with'
        : diode === 'same'
          ? 'It stays dark: the diode takes'
          : 'It lights';
      expectRight({ ask, ...task }, optionOf({ ask, ...task }, says));
    }
  });
});
