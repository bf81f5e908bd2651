import { describe, expect, test } from 'vitest';
import { linkOf, planOfLink } from '../../../src/core/plan/parts.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { CODE_LETTERS, checkLetters, withChecks } from '../../../src/core/making/check-letters.ts';
import { leadCode, readLeadCode } from '../../../src/core/making/lead-code.ts';
import { shortPlanOfLead } from '../../../src/core/making/one-lead.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';
import { linesOfLead } from '../../../src/core/making/sheet-rows.ts';
import { CONNECTORS, contactsOf } from '../../../src/core/wiring/connectors.ts';
import type { Lead } from '../../../src/core/wiring/link.ts';
import { makeJack, makeLead, stylesFor, wires } from '../../../src/core/wiring/link.ts';
import { GAUGES } from '../../../src/core/wiring/wire.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';

const DIN_TO_A = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), [
  makeLead('din5', 'trs-3.5', wires('2-sleeve', '4-ring', '5-tip')),
]);

/** A lead with any plugs and conductors, between jacks that have its connectors. */
function randomPlan(random: Random): Plan {
  const [from, to] = [random.pick(CONNECTORS), random.pick(CONNECTORS)];
  const pairs = contactsOf(from).flatMap((a) => contactsOf(to).map((b) => ({ from: a, to: b })));
  const lead = makeLead(from, to, pairs.filter(() => random.chance(0.15)).slice(0, 8), {
    lengthMetres: random.integer(1, 10_000) / 100,
    gauge: random.pick(GAUGES),
  });
  return planOfLink(
    makeJack('out', from, random.pick(stylesFor('out', from))),
    makeJack('in', to, random.pick(stylesFor('in', to))),
    [lead],
  );
}

/** What a sheet is made from: the lead without its name, and the line of each conductor. */
function sheetOf(plan: Plan, name = plan.leads[0]?.name): unknown {
  const lead = plan.leads.find((one) => one.name === name) as Lead;
  const home = plan.links.find(({ inputs }) => inputs.some(({ leads }) => leads.includes(lead.name)));
  const { name: _, ...rest } = lead;
  return [rest, linesOfLead(lead, home && linkOf(plan, home))];
}

const codeOf = (plan: Plan): string | undefined =>
  leadCode(plan.leads[0] as Lead, linkOf(plan, plan.links[0] as Plan['links'][number]));

function back(code: string): Plan {
  const reading = readLeadCode(code);
  if (!reading.ok) throw new Error(reading.problem);
  return reading.plan;
}

describe('the check letters', () => {
  test('vanish in both sums: 1 alone has the checks that the two equations give by hand', () => {
    // Places weigh x^2, x, 1. a + b = 1 and x a + b = x^2, so a (1 + x) = 1 + x^2 = (1 + x)^2: a = 1 + x, b = x.
    expect(withChecks([1])).toEqual([1, 3, 2]);
    expect(checkLetters([1, 3, 2])).toEqual({ kind: 'right' });
  });

  test('every single slip in a code is found, place and letter', () => {
    const code = withChecks([1, 31, 0, 7, 7, 20, 13, 2, 30, 5, 11]);
    for (const [at, letter] of code.entries())
      for (let wrong = 0; wrong < CODE_LETTERS.length; wrong++) {
        const typed = code.with(at, wrong);
        expect(checkLetters(typed)).toEqual(
          wrong === letter ? { kind: 'right' } : { kind: 'slip', at, letter },
        );
      }
  });

  test('every two neighbours that changed places are caught', () => {
    const random = seededRandom(3);
    for (let seed = 0; seed < 200; seed++) {
      const code = withChecks(Array.from({ length: 11 }, () => random.integer(0, 31)));
      for (let at = 0; at + 1 < code.length; at++) {
        const [a, b] = [code[at] as number, code[at + 1] as number];
        if (a === b) continue;
        expect(checkLetters(code.with(at, b).with(at + 1, a)).kind).toBe('swap');
      }
    }
  });

  test('a code longer than its places have weights is refused', () => {
    expect(() => withChecks(Array.from({ length: 30 }, () => 1))).toThrow(
      'code: must have at most 29 letters before its checks, got 30',
    );
  });
});

describe('the code of a lead', () => {
  test('is short, and stays what it is: a sheet printed today must open in every later version', () => {
    expect(codeOf(DIN_TO_A)).toBe('7YJC-0S32-0C02-H');
    expect(sheetOf(back('7YJC-0S32-0C02-H'))).toEqual(sheetOf(DIN_TO_A));
  });

  test('brings back connectors, forms, length, gauge, conductors in order and their lines, for 500 leads', () => {
    let coded = 0;
    for (let seed = 1; seed <= 500; seed++) {
      const plan = randomPlan(seededRandom(seed));
      const code = codeOf(plan);
      if (code === undefined) continue;
      coded++;
      expect(sheetOf(back(code)), code).toEqual(sheetOf(plan));
    }
    // Two 7-pin plugs with eight conductors that cross make the longest; all fit.
    expect(coded).toBe(500);
  });

  test('may be typed in small letters, with gaps, and with O, I and L for 0 and 1', () => {
    const code = codeOf(DIN_TO_A) as string;
    const typed = code.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l');
    expect(sheetOf(back(typed))).toEqual(sheetOf(DIN_TO_A));
  });

  test('names the letter that is wrong, and what it must be', () => {
    const code = codeOf(DIN_TO_A) as string;
    const wrong = code[6] === 'X' ? 'Y' : 'X';
    const typed = code.slice(0, 6) + wrong + code.slice(7);
    expect(readLeadCode(typed)).toEqual({
      ok: false,
      problem: `the code, letter 2 of group 2: expected '${code[6]}' if nothing else is wrong, got '${wrong}'`,
    });
  });

  test('names what changed places, what is no letter, and what is missing', () => {
    const plain = (codeOf(DIN_TO_A) as string).replaceAll('-', '');
    const at = [...plain].findIndex((letter, place) => letter !== plain[place + 1]);
    const swapped = plain.slice(0, at) + plain[at + 1] + plain[at] + plain.slice(at + 2);
    expect(readLeadCode(swapped)).toMatchObject({ ok: false, problem: /have changed places/ });
    expect(readLeadCode('AB*D')).toEqual({
      ok: false,
      problem: "the code: expected digits and letters, got '*'",
    });
    expect(readLeadCode(' - ')).toMatchObject({ ok: false, problem: /got nothing$/ });
    expect(readLeadCode(plain.slice(1))).toMatchObject({ ok: false });
  });

  test('a code that is whole but stands for no lead, or comes from a later version, says so', () => {
    const spelt = (letters: readonly number[]): string =>
      withChecks(letters)
        .map((letter) => CODE_LETTERS[letter])
        .join('');
    // The lowest two bits are the version.
    expect(readLeadCode(spelt([1]))).toEqual({
      ok: false,
      problem: 'the code: expected version 0, got version 1, made by a later workbook',
    });
    expect(readLeadCode(spelt([31, 31, 31, 28]))).toEqual({
      ok: false,
      problem: 'the code: expected one that stands for a lead, got one that does not',
    });
  });

  test('a lead in series has the lines of its link, by jacks that stand for the rest', () => {
    // Type B has its source on tip; the first lead brings it to ring, so the second is fed like a Type A output.
    const first = makeLead('trs-3.5', 'trs-3.5', wires('tip-ring', 'ring-tip', 'sleeve-sleeve'));
    const adapter = makeLead('trs-3.5', 'din5', wires('tip-5', 'ring-4', 'sleeve-2'));
    const plan = planOfLink(makeJack('out', 'trs-3.5', 'type-b'), makeJack('in', 'din5', 'din'), [
      first,
      adapter,
    ]);
    const code = leadCode(plan.leads[1] as Lead, linkOf(plan, plan.links[0] as Plan['links'][number]));
    const made = back(code ?? '');
    expect(sheetOf(made)).toEqual(sheetOf(plan, 'lead 2'));
    expect(made.devices[0]?.jacks[0]?.style).toBe('type-a');
  });

  test('a lead of more than fifteen conductors has none', () => {
    const all = contactsOf('din5').flatMap((from) => contactsOf('din5').map((to) => ({ from, to })));
    const codeWith = (conductors: number): string | undefined =>
      codeOf(
        planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'din5', 'din'), [
          makeLead('din5', 'din5', all.slice(0, conductors)),
        ]),
      );
    expect(codeWith(15)).toBeDefined();
    expect(codeWith(16)).toBeUndefined();
  });
});

describe('one lead of a plan', () => {
  test('is a plan that opens with that lead first, sound, and with the same lines', async () => {
    const second = makeLead('din5', 'trs-3.5', wires('2-sleeve', '4-ring', '5-tip'), {
      faults: [{ kind: 'open', side: 'to', contact: 'tip' }],
    });
    const first = makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), {
      to: { connector: 'din5', form: 'jack' },
    });
    const plan = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), [
      first,
      second,
    ]);
    const reading = await readSharedLink(await writeSharedLink(shortPlanOfLead(plan, 'lead 2')));
    if (!reading.ok) throw new Error('the link was not read');
    expect(reading.plan.leads[0]).toEqual({ ...plan.leads[1], faults: [] });
    const sound = { ...plan, leads: plan.leads.map((lead) => ({ ...lead, faults: [] })) };
    expect(sheetOf(reading.plan)).toEqual(sheetOf(sound, 'lead 2'));
  });

  test('asking for a lead that is not there is a programmer’s mistake', () => {
    expect(() => shortPlanOfLead(DIN_TO_A, 'lead 9')).toThrow("plan: needs a lead 'lead 9', got lead 1");
  });
});
