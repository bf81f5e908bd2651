import { describe, expect, it } from 'vitest';
import { checkLink, findLead, linkWords } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import { notesIn, oneLink } from './build.ts';

const typeA = makeJack('out', 'trs-3.5', 'type-a', { circuit: 'driver-3v3' });
const onTip = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
const tsLead = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'));

describe('a part over its rating', () => {
  it('comes before a good outcome: a 3.3 V Type A output on a TS lead into an input that listens on the tip', () => {
    const verdict = checkLink(oneLink(typeA, onTip, tsLead));
    expect(verdict.outcome).toBe('flows');
    // The ring spring lies on the sleeve: 3.3 V over 33 ohm and two contacts, 99.8 mA on a rail of 50 mA.
    expect(verdict.danger).toBe('the 3.3 V supply of the output: 100 mA, rated 50 mA');
    expect(verdict.sentence).toBe(`Do not connect: ${verdict.danger ?? ''}.`);
    expect(verdict.change).toMatch(/^Do not connect it as it is\. Use a lead with TRS plugs: /);
    expect([linkWords(verdict).label, linkWords(verdict).grade]).toEqual(['Do not connect', 'bad']);
    expect(notesIn(verdict)[0]).toBe('over-rating');
  });

  it('is found at every depth', () => {
    const link = oneLink(typeA, onTip, tsLead);
    const { danger } = checkLink(link);
    expect([checkLink(link, 'outcome').danger, checkLink(link, 'notes').danger]).toEqual([danger, danger]);
  });

  it("counts a resistor's watts: 5 V over 75 ohm is a third of a watt, and the resistor takes a quarter", () => {
    const hot = makeJack('out', 'din5', 'din', { values: { sourceOhms: 75, railAmperes: 0.5 } });
    const shorted = checkLink(
      oneLink(
        hot,
        makeJack('in', 'din5', 'din'),
        makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), {
          faults: [{ kind: 'short', side: 'from', between: ['4', '2'] }],
        }),
      ),
    );
    expect(shorted.danger).toBe('the 75 ohm source resistor: 0.33 W, rated 0.25 W');
  });

  it('is never proposed as a lead', () => {
    // Any wiring that works leads the source line to the input's ground, which shorts it where grounds meet elsewhere.
    const output = makeJack('out', 'ts-3.5', 'two-contact', { circuit: 'driver-3v3' });
    const input = makeJack('in', 'ts-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    const found = findLead(output, input);
    expect(found.counts.flows).toBeGreaterThan(0);
    expect(found.leads).toEqual([]);
    expect(found.nearMisses[0]?.reason).toMatch(/^Do not connect: /);
  });
});
