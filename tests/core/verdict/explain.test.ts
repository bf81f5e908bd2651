import {
  checkLink,
  noteLabel,
  linkWords,
  sayAmperes,
  sayAmperesFinely,
  sayBeside,
  capital,
  sayList,
  sayOhms,
  sayVolts,
  sayWatts,
} from '../../../src/core/verdict/index.ts';
import { conductorMaps, wiredContacts } from '../../../src/core/verdict/maps.ts';
import type { LinkVerdict } from '../../../src/core/verdict/index.ts';
import { makeLead } from '../../../src/core/wiring/index.ts';
import type { Jack, Lead, Link } from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import { inputsOn, leadFor, outputsOn } from './build.ts';
import { describe, expect, it } from 'vitest';

const OUTPUTS = outputsOn(['din5', 'trs-3.5', 'ts-3.5']);
const INPUTS = inputsOn(['din5', 'trs-3.5', 'ts-3.5']);

/** A seeded draw of links: any map, sometimes a fault, a plug of the other kind, a second input. */
function drawn(count: number): readonly { link: Link; verdict: LinkVerdict }[] {
  const random = seededRandom(4021);
  return Array.from({ length: count }, () => {
    const output = random.pick(OUTPUTS);
    const branches = Array.from({ length: random.chance(0.15) ? 2 : 1 }, () => {
      const input = random.pick(INPUTS);
      return { input, leads: [drawnLead(output, input)] };
    });
    const link: Link = { output, branches };
    return { link, verdict: checkLink(link) };
  });

  function drawnLead(output: Jack, input: Jack): Lead {
    const map = random.pick(
      conductorMaps(wiredContacts(output), wiredContacts(input)).filter(({ length }) => length >= 2),
    );
    if (output.connector === 'trs-3.5' && random.chance(0.2))
      return makeLead(
        'ts-3.5',
        input.connector,
        map.filter(({ from }) => from !== 'ring'),
      );
    const lead = leadFor(output, input, map);
    const contact = map[0]?.from;
    if (contact === undefined || !random.chance(0.2)) return lead;
    return {
      ...lead,
      faults: [
        random.chance(0.5)
          ? { kind: 'open', side: 'from', contact }
          : { kind: 'joint', side: 'from', contact, ohms: random.decades(10, 1e4) },
      ],
    };
  }
}

const VERDICTS = drawn(120);
const textsOf = ({ sentence, steps, change, notes }: LinkVerdict): readonly string[] => [
  sentence,
  ...steps.map(({ text }) => text),
  change,
  ...notes.map(({ detail }) => detail),
];

describe('an explanation', () => {
  it('has a sentence, at least two steps and something to change, in whole sentences', () => {
    for (const { verdict } of VERDICTS) {
      expect(verdict.steps.length).toBeGreaterThanOrEqual(2);
      for (const text of [verdict.sentence, verdict.change, ...verdict.steps.map(({ text }) => text)])
        expect(text).toMatch(/^[A-Z0-9−].*[.]$/);
    }
  });

  it('never shows a hole, a number that is none, or a node of the circuit', () => {
    for (const { verdict } of VERDICTS) {
      for (const text of textsOf(verdict))
        expect(text).not.toMatch(
          /undefined|NaN|Infinity|null|\bin\d |lead\d|\bout (rail|stage|drive)|\s\s|\.\.|a joint\b/,
        );
    }
  });

  it('writes a space before every unit, a real minus sign, and ohm in full', () => {
    for (const { verdict } of VERDICTS) {
      for (const text of textsOf(verdict)) {
        expect(text.replaceAll('PC900V', '')).not.toMatch(/\d(mA|A|V|W|mW|ohm|kohm|m)\b/);
        expect(text).not.toMatch(/(^|\s)-\d/);
        expect(text).not.toContain('Ω');
      }
    }
  });

  it('keeps every step short enough to be heard once', () => {
    for (const { verdict } of VERDICTS)
      for (const { text } of verdict.steps) expect(text.split(' ').length, text).toBeLessThanOrEqual(55);
  });

  it('opens with the outcome', () => {
    for (const { verdict } of VERDICTS) {
      const { label } = linkWords(verdict);
      expect(verdict.sentence.startsWith(label), verdict.sentence).toBe(true);
      expect(label === 'Do not connect').toBe(verdict.danger !== undefined);
    }
  });

  it('says the numbers that were solved', () => {
    for (const { verdict } of VERDICTS) {
      const input = verdict.inputs[verdict.decides];
      if (!input) throw new Error('no input decides');
      const { idle, active, worstIdle, worstActive, on, off } = input;
      const say =
        input.kind === 'current' ? sayBeside([idle, active, worstIdle, worstActive], [on, off]) : sayVolts;
      const numbers: Readonly<Record<LinkVerdict['outcome'], readonly string[]>> = {
        flows:
          input.kind === 'current'
            ? [say(input.active), say(input.worstActive)]
            : [say(input.active), say(input.idle)],
        weak: [say(input.worstActive)],
        starved: [say(input.active), say(input.on)],
        unclear: [say(input.idle), say(input.active)],
        inverted: [say(input.idle), say(input.active)],
        'always-on': [say(input.idle), say(input.active)],
        backwards: [say(input.reverseAmperes.active)],
        'no-path': [],
        unsolved: [],
      };
      for (const number of verdict.danger === undefined ? numbers[verdict.outcome] : [])
        expect(verdict.sentence).toContain(number);
    }
  });

  it('ends each step that comes to a contact with the volts that were solved there', () => {
    let checked = 0;
    for (const { verdict } of VERDICTS) {
      const reading = verdict.readings[verdict.state];
      for (const { spot, text, amperes } of verdict.steps) {
        if (!spot || amperes === 0) continue;
        const contact = reading.contacts.find((one) => JSON.stringify(one.spot) === JSON.stringify(spot));
        if (typeof contact?.volts !== 'number') continue;
        expect(text).toContain(`at ${sayVolts(contact.volts)}`);
        expect(text).toContain(sayAmperes(amperes));
        checked++;
      }
    }
    expect(checked).toBeGreaterThan(100);
  });

  it('follows the current through the input wherever one flows there that is to speak of', () => {
    for (const { link, verdict } of VERDICTS) {
      const input = verdict.inputs[verdict.decides];
      if (!input || input.kind !== 'current') continue;
      const carried = Math.max(
        verdict.state === 'active' ? input.active : input.idle,
        input.reverseAmperes[verdict.state],
      );
      if (carried < 50e-6) continue;
      const told = verdict.steps.map(({ text }) => text).join('\n');
      expect(told, verdict.sentence).toMatch(/LED of the optocoupler|protection diode/);
      if (link.branches.length === 1) expect(told).not.toContain('None of it passes through');
    }
  });
});

describe('numbers in words', () => {
  it('have a digit more where a current and its bound would read alike', () => {
    expect(sayBeside([3.96e-3], [4e-3])(3.96e-3)).toBe('3.96 mA');
    expect(sayBeside([3.9e-3], [4e-3])(3.9e-3)).toBe('3.9 mA');
    expect(sayBeside([4e-3], [4e-3])(4e-3)).toBe('4 mA');
  });

  it('have no more digits than mean something', () => {
    const amperes = [5.378e-3, 0.0227, 0.1, 4e-8, 8.2e-5, -0.00978, 4e-3];
    expect(amperes.map(sayAmperes)).toEqual([
      '5.4 mA',
      '23 mA',
      '100 mA',
      '0 mA',
      '0.082 mA',
      '−9.8 mA',
      '4 mA',
    ]);
    expect(amperes.map(sayAmperesFinely)).toEqual([
      '5.38 mA',
      '22.7 mA',
      '100.0 mA',
      '0 mA',
      '0.082 mA',
      '−9.78 mA',
      '4.00 mA',
    ]);
    expect([1.449, -0.67, 0, -0.001].map(sayVolts)).toEqual(['1.45 V', '−0.67 V', '0.00 V', '0.00 V']);
    expect([220, 10e3, 4.7e3, 33, 0.133905].map(sayOhms)).toEqual([
      '220 ohm',
      '10 kohm',
      '4.7 kohm',
      '33 ohm',
      '0.134 ohm',
    ]);
    expect([0.11352, 0.0279, 0.00064].map(sayWatts)).toEqual(['0.11 W', '27.9 mW', '0.64 mW']);
    expect(['lead 1 carries', 'DIN', ''].map(capital)).toEqual(['Lead 1 carries', 'DIN', '']);
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(sayList)).toEqual(['', 'a', 'a and b', 'a, b and c']);
    expect(noteLabel('split')).toBe('more than one input on an output');
  });

  it('draws links of many outcomes', () => {
    expect(new Set(VERDICTS.map(({ verdict }) => verdict.outcome)).size).toBeGreaterThanOrEqual(5);
  });
});
