/** A good word beside a part that burns: one plan, and each place that says how its link stands. */
import { describe, expect, test } from 'vitest';
import { verdictOf, workOfPlan } from '../../components/bench/work.ts';
import { main } from '../../src/cli/main.ts';
import { boardStanding, checkBoard, csvText, linkRows } from '../../src/core/board/index.ts';
import { harms } from '../../src/core/learn/index.ts';
import { sheetStanding } from '../../src/core/making/index.ts';
import { makePlan, planJack, wholeLink, writePlanText } from '../../src/core/plan/index.ts';
import type { Plan, PlanLink } from '../../src/core/plan/index.ts';
import { makeLead, wires } from '../../src/core/wiring/index.ts';

/**
 * A 3.3 V Type A output, a TS lead, an input that listens on the tip: the input hears it well, while the plug's sleeve lies on the
 * ring. By hand: 3.3 V over 33 ohm and two contacts of 30 mohm is 99.8 mA, told as 100, and the rail gives 50 mA.
 */
const DANGER = 'the 3.3 V supply of the output: 100 mA, rated 50 mA';
const burning = planWith('type-a');

function planWith(style: 'type-a' | 'tip-signal'): Plan {
  const circuit = style === 'type-a' ? { circuit: 'driver-3v3' as const } : {};
  const jack = (direction: 'out' | 'in') =>
    direction === 'out'
      ? planJack('OUT', 'out', 'trs-3.5', style, circuit)
      : planJack('IN', 'in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
  return makePlan({
    devices: [
      { name: 'sender', jacks: [jack('out')] },
      { name: 'pedal', jacks: [jack('in')] },
    ],
    leads: [makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'), { name: 'mono' })],
    links: [
      {
        name: 'guitar lead',
        output: { device: 'sender', jack: 'OUT' },
        inputs: [{ device: 'pedal', jack: 'IN', leads: ['mono'] }],
      },
    ],
  });
}

async function typed(...words: readonly string[]): Promise<{ status: number; out: string }> {
  const out: string[] = [];
  const files: Readonly<Record<string, Plan>> = { burning, good: planWith('tip-signal') };
  const status = await main(words, {
    list: (word) => [word],
    read: (file) => (files[file] ? writePlanText(files[file]) : '{"format": 5}'),
    out: (line) => out.push(line),
    error: (line) => out.push(line),
  });
  return { status, out: out.join('\n') };
}

describe('a part over its rating behind a link that works', () => {
  test('comes first on the bench, in the sentence and in what to change', () => {
    const work = workOfPlan(burning);
    if (typeof work === 'string') throw new Error(work);
    const verdict = verdictOf(work);
    expect(verdict.outcome).toBe('flows');
    expect(verdict.sentence).toBe(`Do not connect: ${DANGER}.`);
    expect(verdict.change).toMatch(/^Do not connect it as it is\. Use a lead with TRS plugs: /);
    expect(verdict.change).not.toContain('Nothing needs to change');
  });

  test('is the same part with the same figure on the Safety page', () => {
    expect(harms().map(({ danger }) => danger)).toContain(DANGER);
  });

  test('comes first on the board: how it stands, what it found, its list of links', () => {
    const check = checkBoard(burning);
    expect(check.outcomes[0]?.danger).toBe(DANGER);
    expect(boardStanding(burning, check)).toEqual({
      grade: 'bad',
      label: 'Do not connect: a part would be over its rating',
    });
    expect(check.findings[0]).toMatchObject({ kind: 'over-rating', severity: 'error' });
    expect(`${check.findings[0]?.what} ${check.findings[0]?.why}`).toContain(DANGER);
    expect(csvText(linkRows(burning, check.outcomes))).toContain('Do not connect');
    expect(csvText(linkRows(burning, check.outcomes))).not.toContain('Works');
  });

  test('comes first on the build sheet of its lead, before anything is cut', () => {
    const [link] = burning.links;
    const { words, problems } = sheetStanding(wholeLink(burning, link as PlanLink));
    expect(words).toBe(`Do not connect: ${DANGER}`);
    expect(problems[0]).toBe(`Between its jacks this lead was solved. Do not connect: ${DANGER}.`);
  });

  test('has an exit status of its own, whatever else is wrong, and none where nothing is over its rating', async () => {
    expect((await typed('burning')).status).toBe(3);
    expect((await typed('good', 'burning')).status).toBe(3);
    expect((await typed('spoiled', 'burning')).status).toBe(3);
    expect((await typed('good')).status).toBe(0);
  });

  test('comes first in the line, the data and the table of the command line', async () => {
    expect((await typed('burning')).out).toContain(`Do not connect: ${DANGER}`);
    const { out } = await typed('--json', 'burning');
    expect(JSON.parse(out)).toMatchObject([{ danger: DANGER, right: false }]);
    const { status, out: table } = await typed('--csv', 'burning', 'good');
    expect(status).toBe(3);
    const [, first = '', second = ''] = table.split('\r\n');
    expect(first).toContain(`Do not connect: ${DANGER}`);
    expect(first).not.toContain('Works');
    expect(second).not.toContain('Do not connect');
  });
});
