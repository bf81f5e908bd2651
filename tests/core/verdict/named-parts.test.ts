import { describe, expect, it } from 'vitest';
import { OUTCOMES, checkLink, lineByLine } from '../../../src/core/verdict/index.ts';
import { worse } from '../../../src/core/verdict/outcomes.ts';
import { USUAL_PARTS, makeJack, styleEntry } from '../../../src/core/wiring/index.ts';
import type { Jack, Link, Part } from '../../../src/core/wiring/index.ts';
import { seededRandom } from '../../support/random.ts';
import { inputsOn, leadFor, oneLink, outputsOn } from './build.ts';

const withPart = (input: Jack, part: Part): Jack => ({ ...input, part });
const plain = (output: Jack, input: Jack): Link =>
  oneLink(output, input, leadFor(output, input, lineByLine(output, input)));

describe('a part that is not known', () => {
  it('works on a plain 5 V DIN lead, with the least margin told: the part that needs 4 mA', () => {
    const verdict = checkLink(
      plain(makeJack('out', 'din5', 'din'), makeJack('in', 'din5', 'din', { part: 'unknown' })),
    );
    expect(verdict.outcome).toBe('flows');
    // 5 V less 1.12 V of LED over 660 ohm: 5.88 mA, the table of the three parts worked by hand from their fits.
    expect(verdict.sentence).toMatch(/^Works with all three usual parts; least margin with PC900V: 5\.9 mA /);
    expect(verdict.byPart).toEqual(USUAL_PARTS.map((part) => ({ part, outcome: 'flows' })));
    expect(verdict.change).toBe('Nothing needs to change.');
  });

  it('is told with the part that fails and the parts that do not', () => {
    // A bridge takes two diodes' worth: about 3.9 mA for the part that needs 4 mA, enough for the two that need 1.6 mA.
    const { sentence } = checkLink(
      plain(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'both-ways', { part: 'unknown' })),
    );
    expect(sentence).toMatch(/^Too little current with PC900V \(works with 6N138 and H11L1\): only 3\./);
  });

  it('works behind a 3.3 V sender of the standard, and with its resistors left at 220 ohm names the part that fails', () => {
    const input = makeJack('in', 'din5', 'din', { part: 'unknown' });
    const sender = (values: Jack['values']): Jack =>
      makeJack('out', 'din5', 'din', { circuit: 'driver-3v3', values });
    // 3.3 V less 1.13 V of LED over 33 + 10 + 220 ohm: 8.25 mA by the table of the three parts; 1.10 V over 660 ohm: 3.34 mA.
    expect(checkLink(plain(sender({}), input)).sentence).toMatch(
      /^Works with all three usual parts; least margin with PC900V: 8\.2 mA /,
    );
    expect(checkLink(plain(sender({ sourceOhms: 220, sinkOhms: 220 }), input)).sentence).toMatch(
      /^Too little current with PC900V \(works with 6N138 and H11L1\): only 3\.3 mA /,
    );
  });

  it('is never less than works where every usual part works, on a standard link of any two types', () => {
    const standard = ({ style }: Jack): boolean => styleEntry(style).status !== 'P';
    const outputs = outputsOn(['din5', 'trs-3.5', 'trs-2.5', 'trs-6.35']).filter(standard);
    const inputs = inputsOn(['din5', 'trs-3.5', 'trs-2.5', 'trs-6.35'], ['unknown']).filter(standard);
    let working = 0;
    for (const output of outputs) {
      for (const input of inputs) {
        const each = USUAL_PARTS.map(
          (part) => checkLink(plain(output, withPart(input, part)), 'outcome').outcome,
        );
        const { outcome } = checkLink(plain(output, input), 'outcome');
        if (each.every((one) => one === 'flows')) working++;
        expect(outcome, `${output.circuit} to ${input.connector}`).toBe(each.reduce(worse));
      }
    }
    expect(working).toBeGreaterThan(20);
  });

  it('is the worst of the usual parts on a seeded draw over every pair of types', () => {
    const random = seededRandom(900);
    const outputs = outputsOn(['din5', 'trs-3.5', 'ts-3.5']);
    const inputs = inputsOn(['din5', 'trs-3.5', 'ts-3.5'], ['unknown']).filter(
      ({ part }) => part === 'unknown',
    );
    for (let run = 0; run < 150; run++) {
      const [output, input] = [random.pick(outputs), random.pick(inputs)];
      const each = USUAL_PARTS.map((part) => checkLink(plain(output, withPart(input, part)), 'outcome'));
      const found = checkLink(plain(output, input), 'outcome');
      if (each.every(({ danger }) => danger === undefined))
        expect(OUTCOMES.indexOf(found.outcome)).toBe(
          Math.max(...each.map(({ outcome }) => OUTCOMES.indexOf(outcome))),
        );
      expect(found.danger === undefined).toBe(each.every(({ danger }) => danger === undefined));
    }
  });

  it('is looked for in mixtures too where several inputs share an output', () => {
    const output = makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' });
    const input = makeJack('in', 'din5', 'din', { part: 'unknown' });
    const branch = { input, leads: [leadFor(output, input, lineByLine(output, input))] };
    const found = checkLink({ output, branches: [branch, branch, branch] }, 'outcome');
    const mixtures = USUAL_PARTS.flatMap((one) =>
      USUAL_PARTS.map((two) =>
        checkLink(
          {
            output,
            branches: [one, two, two].map((part) => ({ ...branch, input: withPart(input, part) })),
          },
          'outcome',
        ),
      ),
    );
    const worst = mixtures.map(({ outcome }) => outcome).reduce(worse);
    expect(found.outcome).toBe(worst);
  });
});
