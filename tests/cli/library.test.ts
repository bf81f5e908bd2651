import { expect, test } from 'vitest';
import { verdictOf, workOfPlan } from '../../components/bench/work.ts';
import { main } from '../../src/cli/main.ts';
import { checkBoard, connect, csvText, linkRows, planOfLead } from '../../src/core/board/index.ts';
import { sheetStanding } from '../../src/core/making/index.ts';
import { LIBRARY, makePlan, wholeLink, writePlanText } from '../../src/core/plan/index.ts';
import type { Device, Plan, PlanJack } from '../../src/core/plan/index.ts';
import { linkWords } from '../../src/core/verdict/index.ts';

/** An output and an input of the library, joined as the board joins them. */
interface Pair {
  readonly words: string;
  readonly plan: Plan;
}

const jacksOf = (direction: PlanJack['direction']): readonly { device: Device; jack: PlanJack }[] =>
  LIBRARY.flatMap((device) =>
    device.jacks.filter((jack) => jack.direction === direction).map((jack) => ({ device, jack })),
  );

/** One pair for each output and input that differ in more than their names. */
function everyPair(): readonly Pair[] {
  const memory = new Map();
  const pairs = new Map<string, Pair>();
  for (const from of jacksOf('out'))
    for (const to of jacksOf('in')) {
      if (from.device === to.device) continue;
      const key = JSON.stringify([from, to].map(({ jack: { name: _, sharesHole: __, ...rest } }) => rest));
      if (pairs.has(key)) continue;
      const words = `${from.device.name} ${from.jack.name} to ${to.device.name} ${to.jack.name}`;
      const joined = connect(
        makePlan({ devices: [from.device, to.device] }),
        { device: from.device.name, jack: from.jack.name },
        { device: to.device.name, jack: to.jack.name },
        memory,
      );
      if (!joined.ok) throw new Error(`${words}: ${joined.problem.expected}`);
      pairs.set(key, { words, plan: joined.plan });
    }
  return [...pairs.values()];
}

test(
  'every output and input of the library, joined as the board joins them, has one outcome on page, board, command line, sheet and printed list',
  { timeout: 120_000 },
  async () => {
    const pairs = everyPair();
    const printed: string[] = [];
    await main(['--json', ...pairs.map((_, at) => `${at}`)], {
      list: (word) => [word],
      read: (file) => writePlanText((pairs[Number(file)] as Pair).plan),
      out: (line) => printed.push(line),
      error: (line) => expect(line).toBe(''),
    });
    const rows = JSON.parse(printed.join('')) as readonly {
      file: string;
      outcome: string;
      danger: string | null;
    }[];
    const seen = new Set<string>();
    pairs.forEach(({ words, plan }, at) => {
      const work = workOfPlan(plan);
      if (typeof work === 'string') throw new Error(`${words}: ${work}`);
      const page = verdictOf(work);
      const told = [page.outcome, page.danger];
      const { outcomes } = checkBoard(plan);
      expect([outcomes[0]?.outcome, outcomes[0]?.danger], `board, ${words}`).toEqual(told);
      const row = rows.find(({ file }) => file === `${at}`);
      expect([row?.outcome, row?.danger ?? undefined], `command line, ${words}`).toEqual(told);
      for (const { name } of plan.leads) {
        const one = planOfLead(plan, name);
        const sheets = one.links.map((link) => sheetStanding(wholeLink(one, link)));
        const { label } = linkWords(page);
        expect(
          sheets.map((sheet) => sheet.words),
          `sheet of ${name}, ${words}`,
        ).toEqual([page.danger === undefined ? label : `${label}: ${page.danger}`]);
      }
      const list = csvText(linkRows(plan, outcomes));
      expect(list, `printed list, ${words}`).toContain(linkWords(page).label);
      seen.add(linkWords(page).label);
    });
    expect(pairs.length).toBeGreaterThan(50);
    expect(seen.size).toBeGreaterThan(1);
  },
);
