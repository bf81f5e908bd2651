/** Files and links that were spoiled, or made to cost time: how long the worst of them is looked at before it is refused or opened. */
import { checkBoard, checkRemembered } from '../../src/core/board/index.ts';
import { readPlanText, sayProblems, writePlanText } from '../../src/core/plan/read-plan.ts';
import { readSharedLink, writeSharedLink } from '../../src/core/plan/shared-link.ts';
import { dearestBoard, randomBoard, wiredBoard } from '../core/board/boards.ts';
import { mutate, randomPlan } from '../core/plan/plans.ts';
import { seededRandom } from '../support/random.ts';
import type { Random } from '../support/random.ts';
import { workedMilliseconds } from '../support/worked.ts';
import type { Figure } from './figures.ts';

/** Files and links, half of them each. */
const HOSTILE = 10_000;

/** Longest time for one of them on the main thread, milliseconds (our own limit). */
const LIMIT_MILLISECONDS = 200;

/** One list somewhere in a value made so long that the text comes near the bound of a file. */
function swell(value: unknown, random: Random): unknown {
  const lists: unknown[][] = [];
  const walk = (one: unknown): void => {
    if (one === null || typeof one !== 'object') return;
    if (Array.isArray(one) && one.length > 0) lists.push(one);
    Object.values(one).forEach(walk);
  };
  walk(value);
  if (lists.length === 0) return value;
  const list = random.pick(lists);
  const member = JSON.stringify(list[0]);
  const count = Math.floor(random.integer(1_000, 900_000) / (member.length + 1));
  list.push(...Array.from({ length: Math.min(count, 100_000) }, () => JSON.parse(member) as unknown));
  return value;
}

/** An object with thousands of fields that no plan has. */
function strangeFields(count: number): unknown {
  const fields = Array.from({ length: count }, (_, at) => [`field ${at}`, at]);
  return { ...(JSON.parse(writePlanText(randomPlan(0))) as object), ...Object.fromEntries(fields) };
}

async function packed(value: unknown): Promise<string> {
  const stream = new Blob([JSON.stringify(value)]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return `a${Buffer.from(await new Response(stream).arrayBuffer()).toString('base64url')}`;
}

async function unpacked(link: string): Promise<unknown> {
  const bytes = new Blob([Buffer.from(link.slice(1), 'base64url')]);
  return new Response(bytes.stream().pipeThrough(new DecompressionStream('deflate-raw'))).json();
}

/** The slowest answers to spoiled files and links. */
export async function figures(): Promise<readonly Figure[]> {
  const random = seededRandom(5);
  const plans = [wiredBoard(8), wiredBoard(63), randomBoard(3, 12), ...[1, 3, 5].map(randomPlan)];
  const texts = plans.map(writePlanText);
  const links = await Promise.all(plans.map(writeSharedLink));
  const lists = await Promise.all(links.map(unpacked));
  let [file, link] = [0, 0];
  for (let round = 0; round < HOSTILE / 2; round++) {
    const large = round % 50 === 0;
    const whole: unknown = JSON.parse(random.pick(texts));
    const spoiled = large ? swell(whole, random) : mutate(whole, random);
    const text = JSON.stringify(round % 500 === 1 ? strangeFields(round * 5) : spoiled);
    let start = workedMilliseconds();
    readPlanText(text);
    file = Math.max(file, workedMilliseconds() - start);
    const good = random.pick(links);
    const at = random.integer(1, good.length - 1);
    const bad = large
      ? await packed(swell(structuredClone(random.pick(lists)), random))
      : `${good.slice(0, at)}A${good.slice(at + 1)}`;
    start = workedMilliseconds();
    await readSharedLink(bad);
    link = Math.max(link, workedMilliseconds() - start);
  }
  const dearest = readPlanText(writePlanText(dearestBoard()));
  if (!dearest.ok) throw new Error(`files: the dearest board is refused: ${sayProblems(dearest.problems)}`);
  let start = workedMilliseconds();
  checkRemembered(dearest.plan, new Map(), 1);
  const waited = workedMilliseconds() - start;
  start = workedMilliseconds();
  checkBoard(dearest.plan);
  const check = workedMilliseconds() - start;
  return [
    {
      name: 'dearest board that is opened: its check until it goes on in the background',
      value: waited,
      unit: 'ms',
      atMost: LIMIT_MILLISECONDS,
    },
    { name: 'dearest board that is opened: its whole check', value: check, unit: 'ms' },
    { name: 'slowest of 5 000 hostile files', value: file, unit: 'ms', atMost: LIMIT_MILLISECONDS },
    { name: 'slowest of 5 000 hostile links', value: link, unit: 'ms', atMost: LIMIT_MILLISECONDS },
  ];
}
