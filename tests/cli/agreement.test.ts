import { expect, test } from 'vitest';
import { verdictOf, workOfPlan } from '../../components/bench/work.ts';
import { main } from '../../src/cli/main.ts';
import { checkBoard, linkRows } from '../../src/core/board/index.ts';
import { makePlan, planJack, readPlanText, writePlanText } from '../../src/core/plan/index.ts';
import type { Plan, PlanLink } from '../../src/core/plan/index.ts';
import { lineByLine, linkWords } from '../../src/core/verdict/index.ts';
import { makeLead } from '../../src/core/wiring/index.ts';
import type { Jack } from '../../src/core/wiring/index.ts';
import { inputsOn, outputsOn } from '../core/verdict/build.ts';
import { seededRandom } from '../support/random.ts';

const PLANS = 24;
const OUTPUTS = outputsOn(['din5', 'trs-3.5']);
const INPUTS = inputsOn(['din5', 'trs-3.5']);

/** A plan of a few devices whose links share outputs and inputs more often than not. */
function sharedPlan(seed: number): Plan {
  const random = seededRandom(seed);
  const jacks = {
    out: [random.pick(OUTPUTS), random.pick(OUTPUTS)],
    in: [random.pick(INPUTS), random.pick(INPUTS)],
  };
  const named = (direction: 'out' | 'in') =>
    jacks[direction].map((jack, at) => ({
      name: `${direction} ${at + 1}`,
      jacks: [planJack('JACK', direction, jack.connector, jack.style, jack)],
    }));
  const pairs = [
    [0, 0],
    [0, 1],
    [1, 0],
    [1, 1],
  ].filter(() => random.chance(0.6)) as [number, number][];
  const leads = pairs.map(([from, to], at) => {
    const [output, input] = [jacks.out[from], jacks.in[to]] as [Jack, Jack];
    const conductors = random.chance(0.7)
      ? lineByLine(output, input)
      : lineByLine(output, input).slice(random.chance(0.5) ? 1 : 0, 2);
    return makeLead(output.connector, input.connector, conductors, { name: `lead ${at + 1}` });
  });
  return makePlan({
    devices: [...named('out'), ...named('in')],
    leads,
    links: pairs.map(([from, to], at): PlanLink => ({
      name: `link ${at + 1}`,
      output: { device: `out ${from + 1}`, jack: 'JACK' },
      inputs: [{ device: `in ${to + 1}`, jack: 'JACK', leads: [`lead ${at + 1}`] }],
    })),
  });
}

test(
  'page, board and command line say the same of the links of a seeded draw of plans that share jacks',
  { timeout: 120_000 },
  async () => {
    const plans = Array.from({ length: PLANS }, (_, seed) => sharedPlan(seed + 1)).filter(
      ({ links }) => links.length > 0,
    );
    const printed: string[] = [];
    await main(['--json', ...plans.map((_, at) => `${at}`)], {
      list: (word) => [word],
      read: (file) => writePlanText(plans[Number(file)] as Plan),
      out: (line) => printed.push(line),
      error: (line) => expect(line).toBe(''),
    });
    const rows = JSON.parse(printed.join('')) as readonly {
      file: string;
      link: string;
      outcome: string;
      danger: string | null;
      why: string;
    }[];
    const seen = new Set<string>();
    plans.forEach((plan, at) => {
      expect(readPlanText(writePlanText(plan)).ok).toBe(true);
      const { outcomes } = checkBoard(plan);
      const listed = linkRows(plan, outcomes);
      const work = workOfPlan(plan);
      if (typeof work === 'string') throw new Error(work);
      plan.links.forEach((link, number) => {
        const row = rows.find(({ file, link: name }) => file === `${at}` && name === link.name);
        const page = verdictOf({ ...work, link: number });
        const board = outcomes[number];
        const where = `plan ${at}, ${link.name}: ${page.sentence}`;
        expect([row?.outcome, row?.danger], where).toEqual([page.outcome, page.danger ?? null]);
        expect(row?.why).toBe(page.sentence);
        expect([board?.outcome, board?.danger === undefined], where).toEqual([
          page.outcome,
          page.danger === undefined,
        ]);
        expect(listed[number]?.outcome.startsWith(linkWords(page).label), where).toBe(true);
        seen.add(linkWords(page).label);
      });
    });
    expect(seen.size).toBeGreaterThan(4);
    expect(rows.length).toBeGreaterThan(PLANS);
  },
);
