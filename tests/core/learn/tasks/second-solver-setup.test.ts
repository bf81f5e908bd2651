/** The second solver on settings: menus read as a player reads them, clocks and bytes counted by hand. */
import { describe, expect, it } from 'vitest';
import { expectRight, numberAfter, optionOf, rowsOf, tasksOf } from './school.ts';

/** A pedal by its menus as they are told. */
const read = (menus: string) => ({
  channel: numberAfter(menus, /channel/),
  omni: /omni on/.test(menus),
  programs: !/program changes off/.test(menus),
  clock: !/clock off/.test(menus),
});

describe('settings', () => {
  it('a pedal acts on its channel or with omni on any, unless its menu shuts the message out', () => {
    for (const task of tasksOf('who-is-meant')) {
      if (task.form.form !== 'several') throw new Error('task: needs several');
      const rows = rowsOf(task);
      const acts = (name: string): boolean => {
        const pedal = read(rows.get(name) ?? '');
        if (/sends a clock/.test(task.ask)) return pedal.clock;
        if (!pedal.omni && pedal.channel !== numberAfter(task.ask, /on channel/)) return false;
        return pedal.programs || !/program change/.test(task.ask);
      };
      expectRight(
        task,
        task.form.options.flatMap((name, at) => (acts(name) ? [String(at)] : [])).join(' ') || '-',
      );
    }
  });

  it('a new pedal takes a channel that no other listens to, unless another listens to all', () => {
    let blocked = 0;
    for (const task of tasksOf('free-channel')) {
      if (task.form.form !== 'choice') throw new Error('task: needs choices');
      const others = [...rowsOf(task).values()].map(read);
      const serving = task.form.options.filter((option) => {
        if (others.some(({ omni }) => omni)) return option.startsWith('None yet');
        const { channel, omni } = read(option.toLowerCase());
        return !omni && !Number.isNaN(channel) && others.every((one) => one.channel !== channel);
      });
      expect(serving, task.ask).toHaveLength(1);
      blocked += serving[0]?.startsWith('None') ? 1 : 0;
      expectRight(task, optionOf(task, serving[0] ?? ''));
    }
    expect(blocked).toBeGreaterThan(0);
  });

  it('what a pedal does with four messages tells which one thing is wrong', () => {
    for (const task of tasksOf('wrong-setting')) {
      const rows = rowsOf(task);
      const acts = (what: string): boolean => rows.get(what) === 'it acts';
      const [program, control, other, clock] = [
        'a program change on its channel',
        'a control change on its channel',
        'a program change on another channel',
        'the clock',
      ].map(acts);
      const says = other
        ? 'Omni is on'
        : program
          ? 'It does not follow'
          : control
            ? 'Program changes are'
            : clock
              ? 'Its channel'
              : 'Its lead';
      expectRight(task, optionOf(task, says));
    }
  });
});

describe('what is sent', () => {
  it('is a program for a stored sound, a clock for the tempo, and a control for one thing', () => {
    for (const task of tasksOf('program-or-control')) {
      const says = /stored|saved/.test(task.ask)
        ? 'A program'
        : /in time|speeds up/.test(task.ask)
          ? 'A clock'
          : 'A control';
      expectRight(task, optionOf(task, says));
    }
  });

  it('of a preset is its number, less one where the manual counts from 1', () => {
    const hex = (byte: number): string => byte.toString(16).padStart(2, '0');
    for (const task of tasksOf('next-door')) {
      const first = numberAfter(task.ask, /presets from/);
      const program = numberAfter(task.ask, /preset/) - first;
      expectRight(task, `${hex(0xc0 + numberAfter(task.ask, /on channel/) - 1)} ${hex(program)}`);
    }
  });

  it('of a clock is 24 bytes for each quarter note, and two for each program change in between', () => {
    for (const task of tasksOf('clock-bytes')) {
      const beats = (numberAfter(task.ask, /tempo is/) * numberAfter(task.ask, /leave in/)) / 60;
      const programs = Number(/In between, (\d+)/.exec(task.ask)?.[1] ?? 0);
      expectRight(task, `${Math.round(beats * 24) + 2 * programs} bytes`);
    }
  });
});
