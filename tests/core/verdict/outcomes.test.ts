import { OUTCOMES, checkLink, noteLabel, outcomeWords } from '../../../src/core/verdict/index.ts';
import { NOTES, worse } from '../../../src/core/verdict/outcomes.ts';
import type { LinkVerdict, NoteKind } from '../../../src/core/verdict/index.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Fault, Jack } from '../../../src/core/wiring/index.ts';
import { leadFor, milliamperes, notesIn, oneLink, verdictFor } from './build.ts';
import { describe, expect, it } from 'vitest';

const LINES = ['4-4', '5-5', '2-2'] as const;
const STRAIGHT = ['tip-tip', 'ring-ring', 'sleeve-sleeve'] as const;
const dinOut = makeJack('out', 'din5', 'din');
const dinIn = makeJack('in', 'din5', 'din');
const din3v3 = makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' });
const inputOf = (values: Jack['values']): Jack => makeJack('in', 'din5', 'din', { values });
const trsOut = (style: Jack['style'], more: Partial<Jack> = {}): Jack =>
  makeJack('out', 'trs-3.5', style, more);
const trsIn = (style: Jack['style'], more: Partial<Jack> = {}): Jack =>
  makeJack('in', 'trs-3.5', style, more);

/** Every outcome that a link that can be solved has. */
const SOLVED = OUTCOMES.filter((outcome) => outcome !== 'unsolved');

describe('every outcome, reached by a link', () => {
  const cases: Readonly<Record<(typeof SOLVED)[number], () => LinkVerdict>> = {
    flows: () => verdictFor(dinOut, dinIn, ...LINES),
    // 5.4 mA at nominal, 3.98 mA with every tolerance at its worst.
    weak: () => verdictFor(dinOut, inputOf({ turnOnAmperes: 4.5e-3 }), ...LINES),
    starved: () => verdictFor(dinOut, inputOf({ turnOnAmperes: 8e-3 }), ...LINES),
    // The pull-up of 10 kohm against 5 kohm and 1 kohm: 3.3 V x 6.0/16 is 1.24 V, between 0.8 and 2.0 V.
    unclear: () =>
      verdictFor(
        trsOut('tip-signal', { values: { sinkOhms: 5000 } }),
        trsIn('tip-signal', { circuit: 'receiver-logic' }),
        ...STRAIGHT,
      ),
    // An LED from the signal straight to ground lights on high, which is rest.
    inverted: () => verdictFor(trsOut('tip-signal'), trsIn('type-b'), 'tip-tip', 'sleeve-ring'),
    'always-on': () => verdictFor(dinOut, trsIn('type-a'), '4-ring', '2-tip'),
    backwards: () => verdictFor(trsOut('type-a'), trsIn('type-b'), ...STRAIGHT),
    'no-path': () => verdictFor(dinOut, dinIn, '4-4'),
  };

  it.each(SOLVED)('%s', (outcome) => {
    const verdict = cases[outcome]();
    expect(verdict.outcome).toBe(outcome);
    expect(verdict.sentence.length).toBeGreaterThan(20);
  });

  it('has a label, a meaning and a grade, and an order from best to worst', () => {
    expect(new Set(OUTCOMES.map((outcome) => outcomeWords(outcome).label)).size).toBe(OUTCOMES.length);
    expect(OUTCOMES.map((outcome) => outcomeWords(outcome).grade)).toEqual([
      'good',
      'doubtful',
      'bad',
      'doubtful',
      'bad',
      'bad',
      'bad',
      'bad',
      'bad',
    ]);
    expect(worse('flows', 'weak')).toBe('weak');
    expect(worse('no-path', 'starved')).toBe('no-path');
  });
});

describe('every note, reached by a link', () => {
  const split = (): LinkVerdict =>
    checkLink({
      output: din3v3,
      branches: [1, 2].map(() => ({ input: dinIn, leads: [leadFor(din3v3, dinIn, wires(...LINES))] })),
    });
  const tsLead = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'));
  const logic = trsIn('tip-signal', { circuit: 'receiver-logic' });
  const cases: Readonly<Record<NoteKind, readonly [() => LinkVerdict, string]>> = {
    'over-rating': [
      () => checkLink(oneLink(trsOut('type-a', { circuit: 'driver-3v3' }), trsIn('type-a'), tsLead)),
      'the 3.3 V supply of the output: 100 mA, rated 50 mA',
    ],
    'source-shorted': [
      () => checkLink(oneLink(trsOut('type-a'), trsIn('type-a'), tsLead)),
      '23 mA through the 220 ohm source resistor in idle, 5.00 V across it',
    ],
    'stage-shorted': [
      () => checkLink(oneLink(trsOut('type-b'), trsIn('type-b'), tsLead)),
      '23 mA through the 220 ohm sink resistor in idle, 5.00 V across it',
    ],
    'depends-on-grounds': [
      () => verdictFor(dinOut, logic, '5-tip'),
      'grounds separate: no path; joined elsewhere: works',
    ],
    'grounds-joined': [
      () => verdictFor(dinOut, logic, '5-tip', '2-sleeve'),
      'this lead joins the ground of the output to that of the input',
    ],
    'shield-open': [
      () => verdictFor(dinOut, dinIn, '4-4', '5-5'),
      'pin 2 of the output does not reach pin 2 of the input',
    ],
    split: [split, '2 inputs share one output; the standard allows one'],
    // Each output holds its own sink line high at rest: both sending, 5 V less 1.47 V over 110, 110 and 220 ohm.
    merged: [
      () => {
        const branch = { input: dinIn, leads: [leadFor(dinOut, dinIn, wires(...LINES))] };
        const rival = { output: dinOut, branches: [{ ...branch, shares: 0 }] };
        return checkLink({ output: dinOut, branches: [branch], rivals: [rival] });
      },
      '2 outputs end on the input; told here while the others rest. While all send at once it gets 8 mA. Their bytes fall into each other: put a merger in front',
    ],
    'too-long': [
      () =>
        checkLink(oneLink(dinOut, dinIn, makeLead('din5', 'din5', wires(...LINES), { lengthMetres: 20 }))),
      '20.0 m in all; the standard stops at 15 m',
    ],
    'plug-does-not-fit': [
      () => checkLink(oneLink(trsOut('type-a'), dinIn, makeLead('din5', 'din5', wires(...LINES)))),
      'a 5-pin DIN plug does not go into a 3.5 mm TRS jack',
    ],
    'spare-pins': [
      () => verdictFor(dinOut, dinIn, ...LINES, '1-1', '3-3'),
      'pin 1 and pin 3 of the output go through; some devices put a supply there',
    ],
    // Surely off: 2600 % at most; the base takes 120 x 0.65 V / 10 kohm, 0.3 of 5 V over 2.2 kohm: 8.48 mA / 26.
    // From the source line to the shield straight: 5 V less 1.46 V over 440 ohm, at the corner 5.5 V less 1.38 V over 418 ohm.
    'may-stay-on': [
      () => verdictFor(dinOut, trsIn('type-a', { values: { turnOnAmperes: 12e-3 } }), '4-ring', '2-tip'),
      '9.9 mA through the input at rest; surely off below 0.33 mA, on from 12 mA',
    ],
    'pin-2-on-shell': [
      () => verdictFor(dinOut, dinIn, '4-4', '5-5', '2-shell'),
      'the standard wants the shield on pin 2 at both ends, never on the shell of a plug',
    ],
    'foreign-supply': [
      () => verdictFor(dinOut, { ...dinIn, values: { foreignAcrossVolts: -12 } }, ...LINES),
      '−12.00 V on pin 4 of the input, against pin 5. It can damage devices and hurt people: take it off with everything switched off, and leave a supply that you do not know to someone qualified',
    ],
    'crossed-inside': [
      () => verdictFor({ ...dinOut, extras: ['crossed-inside'] }, dinIn, ...LINES),
      'pin 4 and pin 5 of the output are exchanged inside',
    ],
    'pin-2-tied': [
      () => verdictFor(dinOut, { ...dinIn, extras: ['shield-tied'] }, ...LINES),
      'pin 2 of the input is tied to ground: the lead joins the grounds of both devices, and audio may hum; the standard leaves it open here',
    ],
    'round-the-loop': [
      () =>
        verdictFor(
          { ...dinOut, values: { tapOhms: 4700 } },
          { ...dinIn, extras: ['turned-diode'] },
          ...LINES,
        ),
      'the output: a load from the source line to ground takes part of the current (4.7 kohm) and the input: the protection diode is turned: it takes the current past the LED',
    ],
    'other-resistor': [
      () => verdictFor(makeJack('out', 'din5', 'din', { values: { sourceOhms: 0.1 } }), dinIn, ...LINES),
      'the source resistor of the output is left out, or as good as that (0.1 ohm); the standard has 220 ohm',
    ],
    'other-supply': [
      () => verdictFor(makeJack('out', 'din5', 'din', { values: { supplyVolts: 9 } }), dinIn, ...LINES),
      'the supply of the output is 9.00 V; the standard has 5.00 V or 3.30 V',
    ],
    practice: [
      () => verdictFor(trsOut('type-b'), trsIn('type-b'), ...STRAIGHT),
      'Type B: common practice, no standard; check the manual',
    ],
  };

  it.each(NOTES)('%s', (kind) => {
    const [make, detail] = cases[kind];
    const note = make().notes.find((one) => one.kind === kind);
    expect(note?.detail).toBe(detail);
    expect(noteLabel(kind).length).toBeGreaterThan(5);
  });

  it('none on a lead that the standard wants', () => {
    expect(verdictFor(dinOut, dinIn, ...LINES).notes).toEqual([]);
    expect(verdictFor(trsOut('type-a'), trsIn('type-a'), ...STRAIGHT).notes).toEqual([]);
  });

  it('pin 2 on a shell is told wherever plug or socket joins them, also where the other device is not reached', () => {
    const touch = (side: 'from' | 'to') => ({ kind: 'short', side, between: ['2', 'shell'] }) as const;
    const lead = (...faults: readonly ReturnType<typeof touch>[]) =>
      makeLead('din5', 'din5', wires('4-4', '5-5'), { faults });
    for (const faults of [[touch('from')], [touch('to')], [touch('from'), touch('to')]])
      expect(notesIn(checkLink(oneLink(dinOut, dinIn, lead(...faults))))).toContain('pin-2-on-shell');
    expect(notesIn(checkLink(oneLink(dinOut, dinIn, lead())))).not.toContain('pin-2-on-shell');
    // Shells joined to each other, and pin 2 to pin 2, as a metal plug may have them: nothing to tell.
    expect(notesIn(verdictFor(dinOut, dinIn, ...LINES, 'shell-shell'))).not.toContain('pin-2-on-shell');
    const adapter = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', 'shell-sleeve', '2-sleeve'));
    expect(notesIn(checkLink(oneLink(dinOut, trsIn('type-a'), adapter)))).toContain('pin-2-on-shell');
  });

  it('a tied pin 2 joins two grounds only where the lead brings the other one', () => {
    const tied = { ...dinIn, extras: ['shield-tied'] } as const;
    const detail = (...pairs: readonly string[]) =>
      verdictFor(dinOut, tied, ...pairs).notes.find(({ kind }) => kind === 'pin-2-tied')?.detail;
    expect(detail(...LINES)).toContain('the lead joins the grounds of both devices');
    expect(detail('4-4', '5-5')).toBe(
      'pin 2 of the input is tied to ground; the standard leaves it open here, since a lead with its shield joined at both ends then joins the grounds of both devices',
    );
  });

  it('a resistor within its 5 % and a supply within its tolerance are those of the standard, just beyond they are not', () => {
    // CA-033, fig. 1: 220 ohm 5 % is 209 to 231; 5 V +/-10 % is 4.5 to 5.5; 3.3 V +/-5 % is 3.135 to 3.465.
    const off = (values: Jack['values']) =>
      notesIn(verdictFor(makeJack('out', 'din5', 'din', { values }), dinIn, ...LINES));
    for (const sourceOhms of [209, 231]) expect(off({ sourceOhms })).toEqual([]);
    for (const sourceOhms of [208.9, 231.1]) expect(off({ sourceOhms })).toEqual(['other-resistor']);
    for (const supplyVolts of [4.5, 5.5]) expect(off({ supplyVolts })).toEqual([]);
    for (const supplyVolts of [4.49, 5.51]) expect(off({ supplyVolts })).toContain('other-supply');
    const low = { sourceOhms: 33, sinkOhms: 10 };
    for (const supplyVolts of [3.135, 3.465]) expect(off({ ...low, supplyVolts })).toEqual([]);
    for (const supplyVolts of [3.13, 3.47]) expect(off({ ...low, supplyVolts })).toContain('other-supply');
  });

  it('an adapter of more than 2 m is too long, one of 2 m is not', () => {
    const adapter = (lengthMetres: number): LinkVerdict =>
      checkLink(
        oneLink(
          trsOut('type-a'),
          dinIn,
          makeLead('trs-3.5', 'din5', wires('tip-5', 'ring-4', 'sleeve-2'), {
            name: 'adapter',
            to: { connector: 'din5', form: 'jack' },
            lengthMetres,
          }),
          makeLead('din5', 'din5', wires(...LINES)),
        ),
      );
    expect(notesIn(adapter(2))).toEqual([]);
    expect(adapter(2.5).notes).toEqual([
      { kind: 'too-long', detail: "adapter 'adapter' is 2.5 m; at most 2 m is recommended" },
    ]);
  });
});

describe('faults in a lead', () => {
  const withFaults = (...faults: readonly Fault[]): LinkVerdict =>
    checkLink(oneLink(dinOut, dinIn, makeLead('din5', 'din5', wires(...LINES), { faults })));
  const active = (verdict: LinkVerdict): number => milliamperes(verdict.inputs[0]?.active ?? NaN);

  it.each(['from', 'to'] as const)('an open joint at either line stops the current (%s)', (side) => {
    for (const contact of ['4', '5'] as const)
      expect(withFaults({ kind: 'open', side, contact }).outcome).toBe('no-path');
    const shield = withFaults({ kind: 'open', side, contact: '2' });
    expect(shield.outcome).toBe('flows');
    expect(notesIn(shield)).toEqual(['shield-open']);
  });

  it.each(['from', 'to'] as const)('a bad joint starves the input (%s)', (side) => {
    // 5 V less 1.39 V over 660 + 2200 ohm: 1.26 mA.
    const verdict = withFaults({ kind: 'joint', side, contact: '4', ohms: 2200 });
    expect(verdict.outcome).toBe('starved');
    expect(active(verdict)).toBeCloseTo(1.26, 2);
  });

  it('adds up joints on one contact, and an open one among them wins', () => {
    const joint = (ohms: number): Fault => ({ kind: 'joint', side: 'to', contact: '5', ohms });
    expect(active(withFaults(joint(100), joint(120)))).toBeCloseTo(active(withFaults(joint(220))), 6);
    expect(withFaults(joint(100), { kind: 'open', side: 'to', contact: '5' }).outcome).toBe('no-path');
  });

  it.each(['from', 'to'] as const)(
    'a bridge of source and sink takes the current past the input (%s)',
    (side) => {
      const verdict = withFaults({ kind: 'short', side, between: ['4', '5'] });
      expect(verdict.outcome).toBe('no-path');
      // 5 V/440 ohm through the bridge.
      expect(Math.abs(milliamperes(verdict.readings.active.supplyAmperes) - 11.36)).toBeLessThan(0.01);
    },
  );

  it.each(['from', 'to'] as const)('a bridge of source and shield shorts the source line (%s)', (side) => {
    const verdict = withFaults({ kind: 'short', side, between: ['4', '2'] });
    expect(notesIn(verdict)).toContain('source-shorted');
    expect(milliamperes(verdict.readings.active.shieldAmperes)).toBeCloseTo(22.7, 1);
  });

  it.each(['from', 'to'] as const)('a bridge of sink and shield lights the input for good (%s)', (side) => {
    expect(withFaults({ kind: 'short', side, between: ['5', '2'] }).outcome).toBe('always-on');
  });
});

describe('leads in series', () => {
  const adapter = makeLead('trs-3.5', 'din5', wires('tip-5', 'ring-4', 'sleeve-2'), {
    name: 'adapter',
    to: { connector: 'din5', form: 'jack' },
    lengthMetres: 0.2,
  });
  const long = makeLead('din5', 'din5', wires(...LINES), { name: 'long' });

  it('carry the current through an adapter and a lead, and the words name both', () => {
    const verdict = checkLink(oneLink(trsOut('type-a'), dinIn, adapter, long));
    expect(verdict.outcome).toBe('flows');
    // 2 x 1.2 m of 26 AWG and 2 x 3 touches: half an ohm beside 660.
    expect(milliamperes(verdict.inputs[0]?.active ?? NaN)).toBeCloseTo(5.37, 1);
    const told = verdict.steps.map(({ text }) => text).join('\n');
    expect(told).toContain("The lead 'adapter' carries 5.4 mA from ring (source) of the output to pin 4");
    expect(told).toContain("(where it meets the lead 'long')");
    expect(told).not.toContain('a joint');
  });

  it('are told by number when that is their name, and a lone lead needs no name', () => {
    const one = { ...adapter, name: 'lead 1' };
    const two = { ...long, name: 'lead 2' };
    const told = checkLink(oneLink(trsOut('type-a'), dinIn, one, two)).steps.map(({ text }) => text);
    expect(told.some((text) => text.startsWith('Lead 1 carries 5.4 mA from ring (source)'))).toBe(true);
    expect(told.some((text) => text.includes('(where it meets lead 2)'))).toBe(true);
    const alone = checkLink(oneLink(dinOut, dinIn, long)).steps.map(({ text }) => text);
    expect(alone.some((text) => text.startsWith('The lead carries 5.4 mA from pin 4'))).toBe(true);
  });

  it('do not meet plug to plug', () => {
    const verdict = checkLink(oneLink(dinOut, dinIn, long, long));
    expect(verdict.outcome).toBe('no-path');
    expect(verdict.notes.find(({ kind }) => kind === 'plug-does-not-fit')?.detail).toBe(
      'two plugs meet here; a plug needs a jack',
    );
  });

  it('do not reach an input where there is no lead at all', () => {
    const verdict = checkLink(oneLink(dinOut, dinIn));
    expect(verdict.outcome).toBe('no-path');
    expect(notesIn(verdict)).toContain('plug-does-not-fit');
  });

  it('tells leads without a name apart by their number', () => {
    const verdict = checkLink(
      oneLink(trsOut('type-a'), dinIn, { ...adapter, name: 'lead' }, { ...long, name: 'lead' }),
    );
    expect(verdict.steps.map(({ text }) => text).join('\n')).toContain(
      'Lead 1 carries 5.4 mA from ring (source) of the output to pin 4 (where it meets lead 2)',
    );
  });
});

describe('inputs that take either direction', () => {
  it.each([
    ['source on ring', ['ring-ring', 'tip-tip']],
    ['source on tip', ['ring-tip', 'tip-ring']],
  ] as const)('flow with the %s', (_, pairs) => {
    const verdict = verdictFor(trsOut('type-a'), trsIn('both-ways'), ...pairs);
    expect(verdict.outcome).toBe('flows');
    // 5 V less 1.43 V of LED and twice 0.64 V of bridge over 660 ohm.
    expect(milliamperes(verdict.inputs[0]?.active ?? NaN)).toBeCloseTo(3.46, 1);
  });
});

describe('an output whose supply is off', () => {
  it('gives no path, and is not said to be shorted', () => {
    const verdict = verdictFor(trsOut('type-a', { circuit: 'driver-off' }), trsIn('type-a'), ...STRAIGHT);
    expect(verdict.outcome).toBe('no-path');
    expect(verdict.readings.active.supplyAmperes).toBe(0);
    expect(notesIn(verdict)).toEqual([]);
    expect(verdict.steps[0]?.text).toBe('The output has no supply: it drives nothing, whatever is sent.');
  });
});

describe('grounds that meet only in the lead, or elsewhere too', () => {
  it('make no difference to an isolated input', () => {
    const verdict = verdictFor(dinOut, dinIn, '4-4', '5-5');
    expect(verdict.byGrounding).toEqual({ separate: 'flows', joined: 'flows' });
  });

  it('make all the difference to a level input whose shield is open', () => {
    const logic = trsIn('tip-signal', { circuit: 'receiver-logic' });
    const verdict = verdictFor(trsOut('tip-signal'), logic, 'tip-tip');
    expect(verdict.byGrounding).toEqual({ separate: 'no-path', joined: 'flows' });
    expect(verdict.outcome).toBe('no-path');
    expect(verdict.grounding).toBe('separate');
  });

  it('can be worse joined than separate: the worse one is reported', () => {
    // A 3.3 V output lets go of its sink line at rest. With that line as the input's ground the loop opens at rest, unless the
    // grounds meet elsewhere: then shield on signal holds the input on for good.
    const led = trsIn('tip-signal', { circuit: 'receiver-led' });
    const verdict = verdictFor(din3v3, led, '2-tip', '5-sleeve');
    expect(verdict.byGrounding).toEqual({ separate: 'flows', joined: 'always-on' });
    expect(verdict.outcome).toBe('always-on');
    expect(verdict.grounding).toBe('joined');
    expect(notesIn(verdict)).toContain('depends-on-grounds');
  });
});

it('refuses a link without an input', () => {
  expect(() => checkLink({ output: dinOut, branches: [] })).toThrow(
    'link: needs at least one input, got none',
  );
});
