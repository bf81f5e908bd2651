/** What is said of a planned board, row by row. */
import { sayMilliseconds, sayPrice, timePress } from '../board/index.ts';
import type { PlannedBoard } from './plan-it.ts';

/** One row of the comparison. */
interface FactRow {
  readonly name: string;
  readonly lines: readonly string[];
}

/** How a plan hangs together, in a few words. */
export function kindWords({ facts, plan }: PlannedBoard): string {
  if (facts.hubs === 0) return 'chain, no hub';
  const chained = plan.links.length > facts.hubs && facts.deepestLinks > 2;
  return `${facts.hubs === 1 ? 'a hub' : `${facts.hubs} hubs`}${chained ? ', with chains behind' : ''}`;
}

/** The head of a plan: the cheapest is only what has a price throughout. */
export function headWords(board: PlannedBoard, best: boolean): string {
  const first = board.unpriced > 0 ? 'Fewest things without a price' : 'Cheapest';
  return `${best ? first : 'The other kind'}: ${kindWords(board)}`;
}

function boundWords(
  { cost, bound, proven, exact, unpriced }: PlannedBoard,
  currency: string,
  best: boolean,
): string {
  if (unpriced > 0) return 'Not known: give what is to be bought a price, and plan again.';
  const none = best ? 'no plan' : 'no plan of this kind';
  if (proven) return `Certain: ${none} costs less than ${sayPrice(bound, currency)}.`;
  const gap = cost > 0 ? ((cost - bound) / cost) * 100 : 0;
  const how = exact ? 'Not every board was tried' : 'Found by a search with chance';
  return `${how}: ${none} costs less than ${sayPrice(bound, currency)}, ${gap.toFixed(1)} % below this one.`;
}

function costWords({ cost, unpriced }: PlannedBoard, currency: string): string {
  if (unpriced === 0) return sayPrice(cost, currency);
  const without = `${unpriced} ${unpriced === 1 ? 'thing' : 'things'} without a price`;
  return cost > 0 ? `${sayPrice(cost, currency)}, and ${without}` : without;
}

/** The rows of one plan, the same names in the same order for each. */
export function factRows(board: PlannedBoard, currency: string, best: boolean): readonly FactRow[] {
  const { facts, check, plan } = board;
  const made = plan.leads.filter(({ origin }) => origin === 'made').length;
  const owned = plan.leads.filter(({ origin }) => origin === 'owned').length;
  const press = (plan.press ?? []).length > 0 ? timePress(plan) : undefined;
  const warnings = check.findings.filter(({ severity }) => severity !== 'note').length;
  return [
    { name: 'cost', lines: [costWords(board, currency)] },
    { name: 'could it cost less?', lines: [boundWords(board, currency, best)] },
    {
      name: 'leads',
      lines: [`${facts.leads}: ${made} to make, ${facts.leads - made - owned} to buy, ${owned} of your own`],
    },
    { name: 'hubs and converters', lines: [String(facts.hubs)] },
    { name: 'worst delay', lines: [`${sayMilliseconds(facts.worstDelaySeconds)} to the last device`] },
    {
      name: 'longest way',
      lines: [`${facts.deepestLinks} ${facts.deepestLinks === 1 ? 'link' : 'links'} from the controller`],
    },
    {
      name: 'one press',
      lines: [
        press === undefined
          ? 'nothing is sent yet'
          : press.seconds === undefined
            ? 'does not reach every device'
            : `everyone has it after ${sayMilliseconds(press.seconds)}`,
      ],
    },
    {
      name: 'silent when one is off',
      lines:
        facts.silentWithout.length === 0
          ? ['Each device hears, whatever other one is off.']
          : facts.silentWithout.map(({ device, silent }) => `${device} off: ${silent.join(', ')} silent`),
    },
    {
      name: 'checks',
      lines: [
        !check.passes
          ? 'does not pass'
          : warnings === 0
            ? 'passes every check'
            : `passes; ${warnings} ${warnings === 1 ? 'warning' : 'warnings'} to read`,
      ],
    },
  ];
}
