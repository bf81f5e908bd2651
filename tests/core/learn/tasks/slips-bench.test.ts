/** Mistakes at the soldering bench and with a meter on a lead, each made as a learner makes it: by shine, by the wrong side, by one beep. */
import { describe, expect, it } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/index.ts';
import { facesOf, rowIn, turned } from './hand-faces.ts';
import { faultsIn, heard, paperLead } from './hand-lead.ts';
import {
  expectMistake,
  numberAfter,
  numberIn,
  optionsOf,
  placesWhere,
  rightOf,
  rowsOf,
  tally,
  tasksOf,
  wrongOptions,
} from './school.ts';

describe('mistakes at the bench', () => {
  it('the wrong order: shell, drawing or stripping after the joint, two steps exchanged', () => {
    /** What each step of a sheet is, by its first words. */
    const STEPS = [
      ['shell', /^Slide/],
      ['strip', /^Cut/],
      ['read', /^Clamp/],
      ['solder', /^Solder/],
      ['tug', /cool/],
      ['close', /^Close/],
      ['test', /test the lead/],
    ] as const;
    const LATE: Readonly<Record<string, string>> = {
      shell: 'shell forgotten',
      strip: 'stripped late',
      read: 'drawing read late',
    };
    const { met, names } = tally();
    for (const task of tasksOf('order-steps')) {
      if (task.form.form !== 'order') throw new Error('task: needs an order');
      const steps = task.form.items.map((item) => STEPS.find(([, words]) => words.test(item))?.[0] as string);
      const order = STEPS.map(([name]): string => name).filter((name) => steps.includes(name));
      const answer = (list: readonly string[]): string => list.map((name) => steps.indexOf(name)).join(' ');
      expect(answer(order)).toBe(task.right);
      const [first = '', ...rest] = order;
      // The first step put off to any later place is one mistake.
      for (let at = 1; at <= rest.length; at += 1)
        expectMistake(task, answer([...rest.slice(0, at), first, ...rest.slice(at)]), met(LATE[first] ?? ''));
      const exchanged = (one: string, other: string): readonly string[] =>
        order.map((name) => (name === one ? other : name === other ? one : name));
      for (const [one, other, name] of [
        ['close', 'test', 'tested before it is closed'],
        ['tug', 'close', 'closed before the tug'],
        ['solder', 'tug', 'tugs at nothing'],
      ] as const)
        if (order.includes(one) && order.includes(other))
          expectMistake(task, answer(exchanged(one, other)), met(name));
    }
    expect(names()).toHaveLength(6);
  });

  it('the wrong cup: seen from the front, counted in order, a spare pin, another line', () => {
    const PINS = [
      [/source|ring of a Type A|tip of a Type B/, '4'],
      [/sink|tip of a Type A|ring of a Type B/, '5'],
      [/shield|sleeve/, '2'],
    ] as const;
    const { met, names } = tally();
    for (const task of tasksOf('solder-cups')) {
      const row = rowIn(task.ask);
      const labels = facesOf(task)[0]?.labels ?? [];
      const pin = PINS.find(([words]) => words.test(task.ask.split('takes')[1] ?? ''))?.[1] ?? '';
      for (const [place, option] of wrongOptions(task)) {
        const said = row[labels.indexOf(option.slice(-1))] ?? '';
        const name =
          said === turned(row)[row.indexOf(pin)]
            ? 'mirrored'
            : said === String(row.indexOf(pin) + 1)
              ? 'counted in order'
              : '13'.includes(said)
                ? 'spare pin'
                : 'another line';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toEqual(['another line', 'counted in order', 'mirrored', 'spare pin']);
  });

  it('the wrong length: the pin forgotten between two middles, the cup forgotten, more held better', () => {
    const { met, names } = tally();
    for (const task of tasksOf('strip-length')) {
      const rows = rowsOf(task);
      const over = numberAfter(task.ask, /stripped by/) - numberIn(rows.get('depth of the cup'));
      const middles = rows.get('from the middle of a pin to the middle of the next');
      for (const [place, said] of wrongOptions(task)) {
        const right = rightOf(task);
        // What reaches over the gap, but not to the middle of the next pin, is safe to who forgets that pins are thick.
        const forgot = middles !== undefined && Math.max(0, over) < numberIn(middles);
        const name =
          said.endsWith('touches nothing') && right.endsWith('touch a pin')
            ? forgot
              ? 'thickness of the pin forgotten'
              : 'bends nowhere'
            : said.startsWith('All the bare')
              ? right.startsWith('Only the rim')
                ? 'short is safe'
                : 'more holds better'
              : said.startsWith('Only the rim')
                ? 'longer is better'
                : 'cup forgotten';
        expectMistake(task, place, met(name));
      }
    }
    expect(names().length).toBeGreaterThanOrEqual(5);
  });

  it('joints judged by their shine, by their solder, or all alike', () => {
    const { met, names } = tally();
    for (const task of tasksOf('judge-joints', [1, 2])) {
      const ticks: readonly (readonly [name: string, places: string])[] = [
        ['dull means bad', placesWhere(task, (one) => / and dull:/.test(one))],
        ['shine means good', placesWhere(task, (one) => / and dull:/.test(one) && !/thin/.test(one))],
        ['lead-free means bad', placesWhere(task, (one) => one.startsWith('Lead-free'))],
        ['all of them', placesWhere(task, () => true)],
      ];
      for (const [at, [name, places]] of ticks.entries()) {
        const before = ticks.slice(0, at).some((one) => one[1] === places);
        if (places !== task.right && !before) expectMistake(task, places, met(name));
      }
    }
    expect(names()).toEqual(['all of them', 'dull means bad', 'lead-free means bad', 'shine means good']);
    for (const task of tasksOf('judge-joints', [3])) {
      const [shiny, good] = [/ and shiny:/.test(task.ask), /thin/.test(task.ask)];
      for (const [place, said] of wrongOptions(task)) {
        const name = said.startsWith('It wants more heat')
          ? 'heat without flux'
          : good
            ? shiny
              ? 'touches a good joint'
              : 'dull means bad'
            : said.startsWith('It is a good one')
              ? shiny
                ? 'shine means good'
                : 'leaves a bad joint'
              : 'another cause';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toHaveLength(8);
  });

  it('a strand taken for harmless or for harmful, and the wrong line grounded', () => {
    const { met, names } = tally();
    for (const task of tasksOf('stray-strand'))
      for (const [place, said] of wrongOptions(task)) {
        const kind = (text: string): 'harmless' | 'joined' | 'grounded' =>
          text.startsWith('Notes get through') ? 'harmless' : /meets sink/.test(text) ? 'joined' : 'grounded';
        const [one, right] = [kind(said), kind(rightOf(task))];
        const name =
          right === 'harmless'
            ? 'fears a spare pin'
            : one === 'harmless'
              ? right === 'joined'
                ? 'a short cut is harmless'
                : 'the shield does nothing'
              : one === 'grounded' && right === 'grounded'
                ? 'source and sink mixed up'
                : 'another line';
        expectMistake(task, place, met(name));
      }
    expect(names()).toHaveLength(5);
  });

  it('hazards: only what burns, all but what burns, everything, and lead-free solder thought harmless', () => {
    /** What burns or flies: hot metal and cut ends. */
    const BURNS = /^The hot iron|^Wire ends are cut without|^The plug is held|nobody protects/;
    const { met, names } = tally();
    for (const task of tasksOf('bench-hazards')) {
      const options = optionsOf(task);
      const dangerous = new Set(task.right.split(' ').map((place) => options[Number(place)]));
      const ticks: readonly (readonly [name: string, places: string])[] = [
        [
          'lead-free is harmless',
          placesWhere(task, (one) => dangerous.has(one) && !one.startsWith('The solder is lead-free')),
        ],
        ['burns only', placesWhere(task, (one) => dangerous.has(one) && BURNS.test(one))],
        ['burns forgotten', placesWhere(task, (one) => dangerous.has(one) && !BURNS.test(one))],
        ['all of them', placesWhere(task, () => true)],
      ];
      for (const [at, [name, places]] of ticks.entries()) {
        const before = ticks.slice(0, at).some((one) => one[1] === places);
        if (places !== task.right && !before) expectMistake(task, places, met(name));
      }
    }
    expect(names()).toEqual(['all of them', 'burns forgotten', 'burns only', 'lead-free is harmless']);
  });
});

describe('mistakes with a meter on a lead', () => {
  it('the wrong number of readings: beeps alone, spare contacts or joints forgotten, both ends counted, every two contacts', () => {
    const { met, names } = tally();
    const two = (count: number): number => [...Array(count).keys()].reduce((sum, one) => sum + one, 0);
    for (const task of tasksOf('fewest-readings')) {
      const wires = (/to the input end: (.+?)\. /.exec(task.ask)?.[1] ?? '').split(', ').length;
      const contacts = [...task.ask.matchAll(/with (\d) contacts/g)].reduce(
        (sum, [, one]) => sum + Number(one),
        0,
      );
      const moved = task.ask.includes('plug moved');
      const beeps = moved ? 2 * wires : wires;
      const silent = two(contacts - wires);
      const given: readonly (readonly [name: string, count: number])[] = [
        ['three beeps are enough', beeps],
        ...(moved ? [['a beep is a good joint', wires + silent] as const] : []),
        ['spare contacts forgotten', beeps + two(wires)],
        ['both ends of a wire', beeps + silent + two(wires)],
        ['every two contacts', two(contacts)],
      ];
      for (const [at, [name, count]] of given.entries()) {
        const before = given.slice(0, at).some((one) => one[1] === count);
        if (String(count) !== task.right && !before) expectMistake(task, String(count), met(name));
      }
    }
    expect(names()).toHaveLength(5);
  });

  it('a fault that does not explain a reading is told one that it would not give', () => {
    const { met, names } = tally();
    for (const task of tasksOf('fault-from-beeps')) {
      const plan = /to the input end: (.+?)\. /.exec(task.ask)?.[1] ?? '';
      for (const [place, said] of wrongOptions(task)) {
        const { mistake = '', sentence } = gradeAnswer(task, place);
        met(mistake);
        const faults = faultsIn(said);
        expect(mistake === 'two symptoms, two faults').toBe(faults.length > 1);
        if (faults.length > 1) continue;
        const [, where = '', was] = /this reading: (.+): (beeps|silent|flickers)\.$/.exec(sentence) ?? [];
        expect(rowsOf(task).get(where), sentence).toBe(was);
        expect(heard(paperLead(plan, faults), where), said).not.toBe(was);
        expect(mistake === 'a beep is a good joint').toBe(
          /is cold/.test(rightOf(task)) && !/is cold/.test(said),
        );
      }
    }
    expect(names()).toHaveLength(4);
  });

  it('a reading that was taken, or that asks about one suspect alone', () => {
    const { met, names } = tally();
    for (const task of tasksOf('best-reading')) {
      const plan = /to the input end: (.+?)\. /.exec(task.ask)?.[1] ?? '';
      const [, taken = ''] = /One reading is taken: (.+) is silent/.exec(task.ask) ?? [];
      const leads = [...rowsOf(task).values()].map((fault) => paperLead(plan, [fault]));
      for (const [place, option] of wrongOptions(task)) {
        const says = leads.map((lead) => heard(lead, option));
        const worst = Math.max(...says.map((one) => says.filter((other) => other === one).length));
        const name = option.toLowerCase() === taken.toLowerCase() ? 'reads it again' : 'favourite first';
        expectMistake(task, place, met(name));
        if (name === 'reads it again') continue;
        expect(worst).toBe(leads.length - 1);
        expect(gradeAnswer(task, place).sentence).toContain(`${worst} are left`);
      }
    }
    expect(names()).toEqual(['favourite first', 'reads it again']);
  });

  it('the other end of a joint, another wire, a beep that is trusted, and one fault for two', () => {
    const { met, names } = tally();
    for (const task of tasksOf('still-and-moved')) {
      const endsIn = (text: string): string => (text.match(/output|input/g) ?? []).join();
      for (const [place, said] of wrongOptions(task)) {
        const contacts = (text: string): string =>
          text.toLowerCase().replaceAll(/ at the (?:output|input) end/g, '');
        const name = said.startsWith('None')
          ? 'a beep is a good joint'
          : said.startsWith('Only one')
            ? 'one fault for two'
            : endsIn(said) === endsIn(rightOf(task)) && contacts(said) !== contacts(rightOf(task))
              ? 'wrong wire'
              : 'wrong end';
        expectMistake(task, place, met(name));
      }
    }
    expect(names()).toEqual(['a beep is a good joint', 'one fault for two', 'wrong end', 'wrong wire']);
  });

  it('beeps and silence taken for more than they are', () => {
    const NAMES = [
      [/joint is good$/, 'a beep is a good joint'],
      [/joint is bad$/, 'beep misjudged'],
      [/^It stays silent, and yet/, 'silence misjudged'],
      [/^It stays silent, and no/, 'silence means dead'],
    ] as const;
    for (const task of tasksOf('beep-at-ohms'))
      for (const [place, said] of wrongOptions(task))
        expectMistake(task, place, NAMES.find(([words]) => words.test(said))?.[1] ?? said);
  });

  it('a lead taken for one of the other pair, for both, for none; and one that serves none, by its short, its open line or its spare pin', () => {
    const { met, names } = tally();
    for (const task of tasksOf('strangers-lead')) {
      const beeps = [...rowsOf(task).keys()];
      const within = beeps.filter((row) => new Set(row.match(/output|input/g)).size === 1);
      for (const [place, said] of wrongOptions(task)) {
        const none = rightOf(task).startsWith('Neither');
        const name = said.startsWith('Either')
          ? 'three beeps are enough'
          : none
            ? 'silence forgotten'
            : said.startsWith('Neither')
              ? 'gave up'
              : 'pair swapped';
        expectMistake(task, place, met(name));
        if (name !== 'silence forgotten') continue;
        const says =
          within.length > 0
            ? 'Two contacts beep'
            : beeps.length < 3
              ? 'One line of the pair'
              : 'One wire ends';
        expect(gradeAnswer(task, place).sentence, beeps.join('; ')).toContain(says);
      }
    }
    expect(names()).toHaveLength(4);
  });
});
