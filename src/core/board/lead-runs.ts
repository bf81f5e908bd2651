/** Runs of leads from the stock, in series between two connectors. */
import { mate, turnLead } from '../wiring/index.ts';
import type { Connector, End } from '../wiring/index.ts';
import type { Offers, Piece, Run } from './offers.ts';

/** Most leads in series that a plan proposes: a lead with an adapter at each end. */
const MOST_PIECES = 3;

/** Most runs between two connectors, cheapest first. */
const MOST_RUNS = 120;

/** Every run of stock leads, turned either way, whose plugs fit these two jacks and each other; cheapest first, then fewest leads. */
export function runsBetween(offers: Offers, output: Connector, input: Connector): readonly Run[] {
  const key = `${output} ${input}`;
  const known = offers.runs.get(key);
  if (known) return known;
  const pieces = offers.stock.flatMap(({ lead }, stock): Piece[] => [
    { stock, lead },
    { stock, lead: turnLead(lead) },
  ]);
  const runs: Run[] = [];
  const grow = (run: readonly Piece[], end: End): void => {
    if (run.length > 0 && fits(end, { connector: input, form: 'jack' })) runs.push(runOf(offers, run));
    if (run.length === MOST_PIECES) return;
    for (const piece of pieces) {
      const owned = offers.stock[piece.stock]?.owned ?? 0;
      const taken = run.filter(({ stock }) => stock === piece.stock).length;
      if ((owned === 0 || taken < owned) && fits(end, piece.lead.from)) grow([...run, piece], piece.lead.to);
    }
  };
  grow([], { connector: output, form: 'jack' });
  runs.sort((a, b) => a.cost - b.cost || a.pieces.length - b.pieces.length || a.metres - b.metres);
  const kept = runs.slice(0, MOST_RUNS);
  offers.runs.set(key, kept);
  return kept;
}

function fits(one: End, other: End): boolean {
  const [plug, jack] = one.form === 'plug' ? [one, other] : [other, one];
  return plug.form === 'plug' && jack.form === 'jack' && mate(plug.connector, jack.connector).fits;
}

function runOf({ stock, priced }: Offers, pieces: readonly Piece[]): Run {
  const kept = pieces.map((piece) => ({ ...piece, ...stock[piece.stock]! }));
  /** Kinds of owned leads are numbered in the order of the stock. */
  const kindOf = (at: number): number => stock.slice(0, at).filter(({ owned }) => owned > 0).length;
  return {
    pieces,
    cost: kept.reduce((sum, { owned, price }) => sum + (owned > 0 ? 0 : priced(price)), 0),
    uses: kept.filter(({ owned }) => owned > 0).map((piece) => kindOf(piece.stock)),
    metres: pieces.reduce((sum, { lead }) => sum + lead.lengthMetres, 0),
  };
}
