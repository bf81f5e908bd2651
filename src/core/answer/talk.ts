/** Will these two talk, and through what? Two jacks as a player tells them, and what lies in the drawer; every answer is a solved circuit. */
import { workingLeads } from '../verdict/index.ts';
import { GOODS, makeLead, seriesBetween } from '../wiring/index.ts';
import type { Goods, Lead, Style } from '../wiring/index.ts';
import { gradeOf, talkMemory, worstGrade } from './grade.ts';
import type { TalkMemory, TalkGrade, TypedPair } from './grade.ts';
import { smallestPurchase } from './purchase.ts';
import { jackOfType, openTypes } from './told.ts';
import type { ToldJack } from './told.ts';

/** Goods in series as they lie between the two jacks. */
export interface Through {
  readonly goods: readonly Goods[];
  readonly leads: readonly Lead[];
}

/** What one pair of types needs: the best ready-made series, or a lead to be made, or neither. */
export interface PairAnswer {
  readonly outputType: Style;
  readonly inputType: Style;
  readonly ready: Through | undefined;
  readonly made: Lead | undefined;
  /** Of the ready series, else of the made lead; 'nothing' where no passive lead can. */
  readonly grade: TalkGrade;
  /** What a shop may hand over in its place: single goods that fit both sockets and do not do, the worst first. */
  readonly amiss: readonly Amiss[];
}

/** Goods that fit and do not do. */
export interface Amiss {
  readonly goods: Goods;
  readonly grade: TalkGrade;
}

/** How one thing of the drawer, or two of them in series, would do; the worst over all open types, and the best. */
export interface DrawerAnswer {
  readonly through: Through;
  readonly worst: TalkGrade;
  readonly best: TalkGrade;
}

/**
 * 'yours': something in the drawer does. 'buy': ask a shop. 'make': have one made. 'unsure': what to buy or make hangs on a type that is not
 * known. 'none': no passive lead can.
 */
type AnswerKind = 'yours' | 'buy' | 'make' | 'unsure' | 'none';

/** The answer. */
export interface TalkAnswer {
  readonly kind: AnswerKind;
  readonly pairs: readonly PairAnswer[];
  /** Each series that the drawer can make between the two jacks, the best first. */
  readonly drawer: readonly DrawerAnswer[];
  /** Things of the drawer that fit neither alone nor with another of it; and what they would do with, if there is anything. */
  readonly unfit: readonly { readonly goods: Goods; readonly needs: Goods | undefined }[];
  /** The fewest goods that serve every pair of types that ready-made goods can serve; undefined where there are none. */
  readonly purchase: readonly Goods[] | undefined;
  /** What to draw: the series or lead that the answer speaks of. */
  readonly drawn: { readonly pair: PairAnswer; readonly leads: readonly Lead[] } | undefined;
}

/** Most things in series: a lead and an adapter. */
const MOST_IN_SERIES = 2;

/** Made leads tried before it is said that none works with every circuit. */
const MOST_MAPS = 12;

/** Grades that a player may rely on. */
const GOOD: readonly TalkGrade[] = ['works', 'marginal'];

const isGood = (grade: TalkGrade): boolean => GOOD.includes(grade);

/** Every series of goods between two sockets, and two jacks of two contacts where a type has them; shortest first, no series twice. */
export function throughBetween(
  goods: readonly Goods[],
  output: ToldJack,
  input: ToldJack,
): readonly Through[] {
  const leads = goods.map(({ lead }) => lead);
  const counts = goods.map(() => 1);
  const seen = new Set<string>();
  return seriesBetween(leads, counts, output.socket, input.socket, MOST_IN_SERIES).flatMap((series) => {
    const key = JSON.stringify(
      series.map(({ lead: { from, to, conductors }, number }) => [
        number,
        from,
        to,
        conductors.map(({ from: a, to: b }) => `${a}-${b}`).sort(),
      ]),
    );
    if (seen.has(key)) return [];
    seen.add(key);
    return [
      { goods: series.map(({ number }) => goods[number] as Goods), leads: series.map(({ lead }) => lead) },
    ];
  });
}

/** Answer for two jacks as told, and for the things in the drawer, named by their `id`. */
export function willTheyTalk(
  output: ToldJack,
  input: ToldJack,
  drawer: readonly string[],
  memory = talkMemory(),
): TalkAnswer {
  const typed = openTypes(output).flatMap((outputType) =>
    openTypes(input).map((inputType): TypedPair => ({ output, input, outputType, inputType })),
  );
  const ready = throughBetween(GOODS, output, input);
  const pairs = typed.map((pair) => pairAnswer(pair, ready, memory));
  const own = GOODS.filter(({ id }) => drawer.includes(id));
  const inDrawer = throughBetween(own, output, input)
    .map((through) => drawerAnswer(through, typed, memory))
    .toSorted((one, other) => order(one) - order(other));
  const used = new Set(inDrawer.flatMap(({ through }) => through.goods));
  const purchase = smallestPurchase(typed, ready, memory);
  const kind = kindOf(pairs, inDrawer);
  return {
    kind,
    pairs,
    drawer: inDrawer,
    unfit: own
      .filter((goods) => !used.has(goods))
      .map((goods) => ({ goods, needs: neededBy(goods, ready, typed, memory) })),
    purchase,
    drawn: drawnOf(kind, pairs, inDrawer),
  };
}

/** What one thing needs in series with it to do for every open type. */
function neededBy(
  goods: Goods,
  ready: readonly Through[],
  typed: readonly TypedPair[],
  memory: TalkMemory,
): Goods | undefined {
  return ready
    .filter((through) => through.goods.includes(goods))
    .find(({ leads }) => typed.every((pair) => isGood(gradeOf(pair, leads, memory))))
    ?.goods.find((one) => one !== goods);
}

/** The best first: what works, then what is shorter; what harms stands before what does nothing, for it must be read. */
function order({ worst, through }: DrawerAnswer): number {
  const RANK: Readonly<Record<TalkGrade, number>> = {
    works: 0,
    marginal: 1,
    harm: 2,
    depends: 3,
    nothing: 4,
  };
  return RANK[worst] * (MOST_IN_SERIES + 1) + through.goods.length;
}

function drawerAnswer(through: Through, typed: readonly TypedPair[], memory: TalkMemory): DrawerAnswer {
  const grades = typed.map((pair) => gradeOf(pair, through.leads, memory));
  return {
    through,
    worst: worstGrade(grades),
    best: grades.find((grade) => grade === 'works') ?? grades.find(isGood) ?? worstGrade(grades),
  };
}

function pairAnswer(pair: TypedPair, ready: readonly Through[], memory: TalkMemory): PairAnswer {
  const { outputType, inputType } = pair;
  const graded = ready.map((through) => ({ through, grade: gradeOf(pair, through.leads, memory) }));
  const amiss = graded
    .flatMap(({ through: { goods }, grade }): readonly Amiss[] =>
      goods[0] && goods.length === 1 && !isGood(grade) ? [{ goods: goods[0], grade }] : [],
    )
    .sort((one, other) => Number(other.grade === 'harm') - Number(one.grade === 'harm'));
  const sold = graded.find(({ grade }) => grade === 'works') ?? graded.find(({ grade }) => isGood(grade));
  if (sold) return { outputType, inputType, ready: sold.through, made: undefined, grade: sold.grade, amiss };
  const made = madeFor(pair, memory);
  return {
    outputType,
    inputType,
    ready: undefined,
    made: made?.lead,
    grade: made?.grade ?? 'nothing',
    amiss,
  };
}

/** The plainest lead that can be made for two types, whatever circuit stands behind each; the best there is where none serves all. */
export function madeFor(
  pair: TypedPair,
  memory: TalkMemory,
): { readonly lead: Lead; readonly grade: TalkGrade } | undefined {
  const output = jackOfType(pair.output, pair.outputType);
  const input = jackOfType(pair.input, pair.inputType);
  const tried = workingLeads(output, input, memory.maps)
    .slice(0, MOST_MAPS)
    .map(({ conductors }) => makeLead(output.connector, input.connector, conductors))
    .map((lead) => ({ lead, grade: gradeOf(pair, [lead], memory) }));
  return (
    tried.find(({ grade }) => grade === 'works') ??
    tried.find(({ grade }) => isGood(grade)) ??
    tried.find(({ grade }) => grade === 'depends')
  );
}

function kindOf(pairs: readonly PairAnswer[], drawer: readonly DrawerAnswer[]): TalkAnswer['kind'] {
  if (drawer.some(({ worst }) => isGood(worst))) return 'yours';
  if (pairs.every(({ grade }) => grade === 'nothing' || grade === 'harm')) return 'none';
  if (pairs.length > 1) return 'unsure';
  return pairs[0]?.ready ? 'buy' : 'make';
}

function drawnOf(
  kind: TalkAnswer['kind'],
  pairs: readonly PairAnswer[],
  drawer: readonly DrawerAnswer[],
): TalkAnswer['drawn'] {
  const [pair] = pairs.filter(({ grade }) => isGood(grade));
  const first = pair ?? pairs[0];
  if (!first) return undefined;
  const own = kind === 'yours' ? drawer.find(({ worst }) => isGood(worst))?.through.leads : undefined;
  const leads = own ?? first.ready?.leads ?? (first.made ? [first.made] : undefined);
  return leads === undefined ? undefined : { pair: first, leads };
}
