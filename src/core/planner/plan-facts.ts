/** What is said of a planned board, row by row. */
import { sayMilliseconds, sayPrice, shoppingList, timePress } from '../board/index.ts';
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

/** What has no price and could have been bought, by name: while everything else has one, a plan leaves it out. */
function leftOut({ unpriced, plan }: PlannedBoard) {
  if (unpriced > 0) return { leads: [], hubs: [] };
  const without = ({ price = 0 }: { readonly price?: number }): boolean => price === 0;
  return {
    leads: (plan.stock ?? []).filter((one) => one.owned === 0 && without(one)).map(({ lead }) => lead.name),
    hubs: (plan.hubs ?? []).filter(without).map(({ name }) => name),
  };
}

function leftOutLines(names: readonly string[], owned: string): readonly string[] {
  if (names.length === 0) return [];
  const them = names.length === 1 ? 'it' : 'each';
  const say = names.map((name) => `'${name}'`).join(', ');
  return [`Left out, as without a price: ${say}. Give ${them} a price${owned}, and plan again.`];
}

function boundWords(board: PlannedBoard, currency: string, best: boolean): string {
  const { cost, bound, proven, exact, unpriced } = board;
  const { leads, hubs } = leftOut(board);
  const known = leads.length + hubs.length > 0 ? 'of what has a price, ' : '';
  if (unpriced > 0) return 'Not known: give what is to be bought a price, and plan again.';
  const none = `${known}${best ? 'no plan' : 'no plan of this kind'}`;
  if (proven) return `Certain: ${none} costs less than ${sayPrice(bound, currency)}.`;
  const gap = cost > 0 ? ((cost - bound) / cost) * 100 : 0;
  const how = exact ? 'Not every board was tried' : 'Found by a search with chance';
  return `${how}: ${none} costs less than ${sayPrice(bound, currency)}, ${gap.toFixed(1)} % below this one.`;
}

function costWords({ cost, unpriced, plan }: PlannedBoard, currency: string): string {
  if (unpriced === 0) {
    const invented = shoppingList(plan).rows.some(({ whosePrice }) => whosePrice === 'invented');
    return `${sayPrice(cost, currency)}${invented ? ', with invented prices in it' : ''}`;
  }
  const without = `${unpriced} ${unpriced === 1 ? 'thing' : 'things'} without a price`;
  return cost > 0 ? `${sayPrice(cost, currency)}, and ${without}` : without;
}

/** The rows of one plan, the same names in the same order for each. */
export function factRows(board: PlannedBoard, currency: string, best: boolean): readonly FactRow[] {
  const { facts, check, plan } = board;
  const made = plan.leads.filter(({ origin }) => origin === 'made').length;
  const owned = plan.leads.filter(({ origin }) => origin === 'owned').length;
  const press = (plan.press ?? []).length > 0 ? timePress(plan) : undefined;
  const without = leftOut(board);
  const warnings = check.findings.filter(({ severity }) => severity !== 'note').length;
  return [
    { name: 'cost', lines: [costWords(board, currency)] },
    { name: 'could it cost less?', lines: [boundWords(board, currency, best)] },
    {
      name: 'leads',
      lines: [
        `${facts.leads}: ${made} to make, ${facts.leads - made - owned} to buy, ${owned} of your own`,
        ...leftOutLines(without.leads, ', or say how many of it you own'),
      ],
    },
    { name: 'hubs and converters', lines: [String(facts.hubs), ...leftOutLines(without.hubs, '')] },
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
