import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { linesOf } from '../../src/cli/rows.ts';
import type { Row } from '../../src/cli/rows.ts';
import { OUTCOMES } from '../../src/core/verdict/index.ts';
import { writePlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { plainPlan } from '../core/plan/plans.ts';

/** Starting Node takes a second on a busy machine. */
const PATIENCE = 60_000;

const good = plainPlan();

function withConductors(plan: Plan, conductors: Plan['leads'][number]['conductors']): Plan {
  return { ...plan, leads: plan.leads.map((lead) => ({ ...lead, conductors })) };
}

function withOutput(plan: Plan, changes: Partial<Plan['devices'][number]['jacks'][number]>): Plan {
  return withJacks(plan, 'out', changes);
}

function withJacks(
  plan: Plan,
  direction: 'out' | 'in',
  changes: Partial<Plan['devices'][number]['jacks'][number]>,
): Plan {
  const devices = plan.devices.map((device) => ({
    ...device,
    jacks: device.jacks.map((jack) => (jack.direction === direction ? { ...jack, ...changes } : jack)),
  }));
  return { ...plan, devices };
}

/** The plain plan with its link called otherwise. */
function withName(name: string): Plan {
  return { ...good, links: good.links.map((link) => ({ ...link, name })) };
}

const open = withConductors(good, [{ from: '4', to: '4' }]);
const FILES: Readonly<Record<string, string>> = {
  'good.json': writePlanText(good),
  'open.json': writePlanText(open),
  'empty.json': writePlanText({ ...good, links: [] }),
  'bad.json': '{"format": 5}',
  'cheat.json': writePlanText(withOutput(good, { values: { sourceOhms: 100 } })),
  'weak.json': writePlanText(withJacks(good, 'in', { part: 'CNY17-1', values: { loadOhms: 25_000 } })),
  '-': writePlanText(open),
  '--odd': writePlanText(good),
};

/** The command line on files in memory. */
async function runOn(
  files: Readonly<Record<string, string>>,
  ...given: readonly string[]
): Promise<{ status: number; out: string; error: string }> {
  const [out, error]: [string[], string[]] = [[], []];
  const status = await main(given, {
    list: (word) =>
      word.endsWith('/') ? Object.keys(files).filter((file) => file.startsWith(word)) : [word],
    read: (file) => {
      const text = files[file];
      if (text === undefined) throw new Error(`no such file, open '${file}'`);
      return text;
    },
    out: (line) => out.push(`${line}\n`),
    error: (line) => error.push(`${line}\n`),
  });
  return { status, out: out.join(''), error: error.join('') };
}

const run = (...given: readonly string[]) => runOn(FILES, ...given);

const TURNED = [
  { from: '5', to: '4' },
  { from: '2', to: '5' },
] as const;

describe('Bytes sent from the command line', () => {
  test('are heard as F3 FE 00 where the line is upside down, framing marked', async () => {
    // By hand: 90 88 00 in ten bits each, every bit turned over; the first start bit found is 5 bits into 90.
    const plan = withJacks(withConductors(good, TURNED), 'in', { part: 'H11L1' });
    const turned = { 'turned.json': writePlanText(plan) };
    const { out } = await runOn(turned, '--json', '--send', '90 88 00', 'turned.json');
    const [row] = JSON.parse(out) as [{ received: { value: number; kind: string; seconds: number }[] }];
    expect(row.received.map(({ value, kind }) => [value, kind])).toEqual([
      [0xf3, 'framing error'],
      [0xfe, 'byte'],
      [0x00, 'break'],
    ]);
    expect(row.received.every(({ seconds }) => seconds > 0)).toBe(true);
    expect((await runOn(turned, '--send', '90 88 00', 'turned.json')).out).toContain(
      'heard: F3 (framing error) FE 00 (break)',
    );
  });

  test('are heard as sent where the link works, and bad ones are refused', async () => {
    expect((await run('--send', '90 3C 40', 'good.json')).out).toContain("'link 1': heard: 90 3C 40\n");
    const { status, error } = await run('--send', '9', 'good.json');
    expect([status, error.split('\n')[0]]).toEqual([
      2,
      `--send: expected bytes of two hex digits each, as in "90 88 00", got '9'`,
    ]);
  });
});

describe('An input that loses bits behind its LED', () => {
  test('does not count as right, though its current is: in lines, as data, in the table and by the status', async () => {
    const { status, out } = await run('weak.json');
    expect(status).toBe(1);
    expect(out).toMatch(/Works: .*\n.* with both clocks 1 % off the part behind it loses bits: /);
    const [row] = JSON.parse((await run('--json', 'weak.json')).out) as readonly Record<string, unknown>[];
    expect([row?.['outcome'], row?.['right']]).toEqual(['flows', false]);
    expect(row?.['lostBits']).toContain('loses bits');
    expect((await run('--csv', 'weak.json')).out).toContain('loses bits');
    expect((await run('good.json', 'weak.json')).out).toContain('Not right: 1 Bits lost.');
  });
});

describe('The command line', () => {
  test('ends with 0 and a line for each link when every link flows', async () => {
    const { status, out, error } = await run('good.json', 'good.json');
    expect([status, error]).toEqual([0, '']);
    expect(out.trim().split('\n')).toHaveLength(2);
    expect(out).toMatch(/^good\.json: 'link 1': Works: 5\.4 mA/);
  });

  test('ends with 1 when a link does not flow, and when there is no link', async () => {
    const lost = await run('open.json');
    expect([lost.status, lost.out.startsWith("open.json: 'link 1': No path: ")]).toEqual([1, true]);
    const empty = await run('empty.json');
    expect([empty.status, empty.out]).toEqual([1, 'empty.json: no link to check\n']);
  });

  test('ends with 2 for a bad file, a missing file, an unknown option and no file, and says why', async () => {
    const bad = await run('bad.json', 'good.json');
    expect(bad.status).toBe(2);
    expect(bad.error).toContain('bad.json: format: expected one of five-milliamps-plan, got 5');
    expect(bad.out).toContain("good.json: 'link 1'");
    const missing = await run('nowhere.json');
    expect([missing.status, missing.error.startsWith('nowhere.json: cannot be read')]).toEqual([2, true]);
    expect((await run('--loud', 'good.json')).error).toContain(
      '--loud: expected --json, --csv, --against, --send, --help or --, got an option that does not exist',
    );
    expect([(await run()).status, (await run('good.json', '--against')).status]).toEqual([2, 2]);
  });

  test('prints with --json an array with an entry for each link, in milliamperes that a hand can check', async () => {
    const { status, out } = await run('--json', 'good.json', 'open.json');
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
        'name',
        'notes',
        'number',
        'outcome',
        'read',
        'right',
        'sameTask',
        'task',
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

  test('fails with --against a file whose jacks were changed, and passes the same file', async () => {
    const { status, out } = await run('--against', 'good.json', 'cheat.json');
    expect(status).toBe(1);
    expect(out).toContain(
      "cheat.json: 'link 1': Not the teacher's task: jack 'out' of 'switcher': sourceOhms must be the default, got 100",
    );
    expect((await run('--against', 'good.json', 'good.json')).status).toBe(0);
    expect((await run('--against', 'bad.json', 'good.json')).status).toBe(2);
  });
});

describe('What is typed', () => {
  test('--help prints how to use it and ends with 0, whatever else is typed', async () => {
    const { status, out, error } = await run('--json', '--help', 'nowhere.json');
    expect([status, error]).toEqual([0, '']);
    expect(out).toMatch(/^usage: .*\[--against TEACHER\.json\]/);
  });

  test('- is the standard input, once, and what follows -- is a file', async () => {
    expect((await run('-', 'good.json')).out.split('\n').map((line) => line.slice(0, 10))).toEqual([
      "-: 'link 1",
      'good.json:',
      '2 handed i',
      'Not right:',
      '',
    ]);
    expect(await run('-', '--against', '-')).toMatchObject({ status: 2, out: '' });
    expect((await run('--odd')).status).toBe(2);
    expect(await run('--', '--odd')).toMatchObject({ status: 0, error: '' });
  });
});

describe('Names and values of a file', () => {
  const FORGED = "1': No path\nother.json: 'link 1";
  const CODES = 'a\u001b[2J\u009b1m\u202eb\u2028c\r';

  test('are quoted, and a line break in one makes no second line', async () => {
    const { out } = await runOn({ 'a.json': writePlanText(withName(FORGED)) }, 'a.json');
    expect(out.trim().split('\n')).toHaveLength(1);
    expect(out).toMatch(/^a\.json: '1\\': No path\\u000aother\.json: \\'link 1': Works: /);
  });

  test('show codes in place of what a terminal acts on: in lines, as data, in problems, and in names of files', async () => {
    const files = {
      'a.json': writePlanText(withName(CODES)),
      'bad.json': JSON.stringify({
        ...JSON.parse(writePlanText(good)),
        devices: [{ name: 'x', kind: CODES }],
      }),
      [CODES]: writePlanText(good),
    };
    const lines = await runOn(files, 'a.json', 'bad.json', CODES, 'b\u001b.json');
    const data = await runOn(files, '--json', 'a.json', CODES);
    const acting = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2028\u2029]/u;
    expect(
      [lines.out, lines.error, data.out, (await run(`--${CODES}`)).error].filter((text) => acting.test(text)),
    ).toEqual([]);
    expect(lines.out).toContain(String.raw`a.json: 'a\u001b[2J\u009b1m\u202eb\u2028c\u000d': Works`);
    expect(lines.error.trim().split('\n')).toHaveLength(2);
    expect(JSON.parse(data.out)).toMatchObject([{ link: CODES }, { file: CODES }]);
  });

  test('what could not be solved of a sending is a line of its own, and no name in it acts either', async () => {
    const [row] = JSON.parse((await run('--json', 'good.json')).out) as [Row];
    const lines = linesOf({ ...row, file: 'a b.json', received: [], notSolved: 'Not solved: node \u001b.' });
    expect(lines.slice(1)).toEqual([
      "'a b.json': 'link 1': heard: nothing",
      String.raw`'a b.json': 'link 1': Not solved: node \u001b.`,
    ]);
  });
});

test(
  'As a process it reads files from where it was called and the standard input, and ends with the status',
  {
    timeout: PATIENCE,
  },
  () => {
    const folder = mkdtempSync(join(tmpdir(), 'verdict-'));
    writeFileSync(join(folder, 'good.json'), FILES['good.json'] as string);
    const { status, stdout, stderr } = spawnSync(
      join('node_modules', '.bin', 'node'),
      [join('src', 'cli', 'verdict.ts'), 'good.json', '-', 'nowhere.json'],
      { encoding: 'utf8', env: { ...process.env, INIT_CWD: folder }, input: FILES['-'] as string },
    );
    rmSync(folder, { recursive: true });
    expect(status).toBe(2);
    expect(stdout).toMatch(
      /^good\.json: 'link 1': Works: .*\n-: 'link 1': No path: .*\n3 handed in: .*\n.*\n$/,
    );
    expect(stderr).toMatch(/^nowhere\.json: cannot be read: /);
  },
);
