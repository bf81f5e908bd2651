import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { OUTCOMES } from '../../src/core/verdict/index.ts';
import { writePlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { plainPlan } from '../core/plan/plans.ts';

/** Starting Node takes a second on a busy machine. */
const PATIENCE = 60_000;

let folder = '';

function run(...given: readonly string[]): { status: number | null; out: string; error: string } {
  const { status, stdout, stderr } = spawnSync(
    join('node_modules', '.bin', 'node'),
    [join('src', 'cli', 'verdict.ts'), ...given],
    { encoding: 'utf8', env: { ...process.env, INIT_CWD: folder } },
  );
  return { status, out: stdout, error: stderr };
}

function withConductors(plan: Plan, conductors: Plan['leads'][number]['conductors']): Plan {
  return { ...plan, leads: plan.leads.map((lead) => ({ ...lead, conductors })) };
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'verdict-'));
  const good = plainPlan();
  writeFileSync(join(folder, 'good.json'), writePlanText(good));
  writeFileSync(join(folder, 'open.json'), writePlanText(withConductors(good, [{ from: '4', to: '4' }])));
  writeFileSync(join(folder, 'empty.json'), writePlanText({ ...good, links: [] }));
  writeFileSync(join(folder, 'bad.json'), '{"format": 5}');
  const cheat: Plan = {
    ...good,
    devices: good.devices.map((device) => ({
      ...device,
      jacks: device.jacks.map((jack) =>
        jack.direction === 'out' ? { ...jack, values: { sourceOhms: 100 } } : jack,
      ),
    })),
  };
  writeFileSync(join(folder, 'cheat.json'), writePlanText(cheat));
});
afterAll(() => rmSync(folder, { recursive: true }));

const TURNED = [
  { from: '5', to: '4' },
  { from: '2', to: '5' },
] as const;

describe('Bytes sent from the command line', { timeout: PATIENCE }, () => {
  test('are heard as F3 FE 00 where the line is upside down, framing marked', () => {
    // By hand: 90 88 00 in ten bits each, every bit turned over; the first start bit found is 5 bits into 90.
    const good = plainPlan();
    const plan: Plan = {
      ...withConductors(good, TURNED),
      devices: good.devices.map((device) => ({
        ...device,
        jacks: device.jacks.map((jack) => (jack.direction === 'in' ? { ...jack, part: 'H11L1' } : jack)),
      })),
    };
    writeFileSync(join(folder, 'turned.json'), writePlanText(plan));
    const { out } = run('--json', '--send', '90 88 00', 'turned.json');
    const [row] = JSON.parse(out) as [{ received: { value: number; kind: string; seconds: number }[] }];
    expect(row.received.map(({ value, kind }) => [value, kind])).toEqual([
      [0xf3, 'framing error'],
      [0xfe, 'byte'],
      [0x00, 'break'],
    ]);
    expect(row.received.every(({ seconds }) => seconds > 0)).toBe(true);
    expect(run('--send', '90 88 00', 'turned.json').out).toContain('heard: F3 (framing error) FE 00 (break)');
  });

  test('are heard as sent where the link works, and bad ones are refused', () => {
    expect(run('--send', '90 3C 40', 'good.json').out).toContain('link 1: heard: 90 3C 40\n');
    const { status, error } = run('--send', '9', 'good.json');
    expect([status, error.split('\n')[0]]).toEqual([
      2,
      `--send: expected bytes of two hex digits each, as in "90 88 00", got '9'`,
    ]);
  });
});

describe('The command line', { timeout: PATIENCE }, () => {
  test('ends with 0 and a line for each link when every link flows', () => {
    const { status, out, error } = run('good.json', 'good.json');
    expect([status, error]).toEqual([0, '']);
    expect(out.trim().split('\n')).toHaveLength(2);
    expect(out).toMatch(/^good\.json: link 1: Works: 5\.38 mA/);
  });

  test('ends with 1 when a link does not flow, and when there is no link', () => {
    const open = run('open.json');
    expect([open.status, open.out.startsWith('open.json: link 1: No path: ')]).toEqual([1, true]);
    const empty = run('empty.json');
    expect([empty.status, empty.out]).toEqual([1, 'empty.json: no link to check\n']);
  });

  test('ends with 2 for a bad file, a missing file, an unknown option and no file, and says why', () => {
    const bad = run('good.json', 'bad.json');
    expect(bad.status).toBe(2);
    expect(bad.error).toContain('bad.json: format: expected one of five-milliamps-plan, got 5');
    expect(bad.out).toContain('good.json: link 1');
    const missing = run('nowhere.json');
    expect([missing.status, missing.error.startsWith('nowhere.json: cannot be read')]).toEqual([2, true]);
    expect(run('--loud', 'good.json').error).toContain(
      '--loud: expected --json, --against or --send, got an option that does not exist',
    );
    expect([run().status, run('good.json', '--against').status]).toEqual([2, 2]);
  });

  test('prints with --json an array with an entry for each link, in milliamperes that a hand can check', () => {
    const { status, out } = run('--json', 'good.json', 'open.json');
    expect(status).toBe(1);
    const rows = JSON.parse(out) as readonly Record<string, unknown>[];
    expect(rows).toHaveLength(2);
    for (const row of rows) {
      expect(Object.keys(row).sort()).toEqual([
        'activeAmperes',
        'activeVolts',
        'danger',
        'file',
        'idleAmperes',
        'idleVolts',
        'link',
        'notes',
        'outcome',
        'why',
        'worstAmperes',
        'worstVolts',
      ]);
      expect(OUTCOMES).toContain(row['outcome']);
      expect(row['activeVolts']).toBeNull();
    }
    // 5 V through 660 ohm into the 6N138 curve: 5.38 mA with the driver at 0 V (worked by hand from the data sheet fit).
    expect(rows[0]?.['activeAmperes']).toBeCloseTo(5.38e-3, 5);
    expect(rows.map(({ file, outcome }) => [file, outcome])).toEqual([
      ['good.json', 'flows'],
      ['open.json', 'no-path'],
    ]);
  });

  test('fails with --against a file whose jacks were changed, and passes the same file', () => {
    const { status, out } = run('--against', 'good.json', 'cheat.json');
    expect(status).toBe(1);
    expect(out).toContain(
      "differs from the teacher's: jack 'out' of 'switcher': sourceOhms must be the default, got 100",
    );
    expect(run('--against', 'good.json', 'good.json').status).toBe(0);
    expect(run('--against', 'bad.json', 'good.json').status).toBe(2);
  });
});
