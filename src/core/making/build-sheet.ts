/** The sheet to make a lead from: plain data that a page draws, prints and reads aloud. */
import { sayList } from '../verdict/index.ts';
import { conductorLines } from '../verdict/index.ts';
import type { Connector, Form } from '../wiring/index.ts';
import { contactWords, familyOf, words } from '../wiring/index.ts';
import type { Conductor, Lead, Link, Side } from '../wiring/index.ts';
import { SIDES } from '../wiring/index.ts';
import { linkCircuit } from '../wiring/index.ts';
import type { Line, Status } from '../wiring/index.ts';
import { ADAPTER_METRES, STANDARD_METRES } from '../wiring/index.ts';
import { COLOUR_CODES, USUAL_COLOURS, colourWords } from './colours.ts';
import { leadPairs } from './lead-table.ts';
import type { ProofPlace } from './lead-table.ts';
import { proofRows } from './proof-rows.ts';
import type { ProofRow } from './proof-rows.ts';

/** Bodies a plug may have. */
export const PLUG_BODIES = ['straight', 'right-angle', 'flat'] as const;

/** The body of one plug. */
export type PlugBody = (typeof PLUG_BODIES)[number];

/** The cable the reader has. Diameters in metres. */
export interface Stock {
  readonly cores: number;
  readonly shielded: boolean;
  readonly outsideMetres: number;
}

/** What the reader chooses for a sheet. */
export interface SheetChoices {
  readonly bodies: Readonly<Record<Side, PlugBody>>;
  /** Widest cable that each plug takes, metres; undefined when the plug is not bought yet. */
  readonly plugTakesMetres: Readonly<Partial<Record<Side, number>>>;
  /** What is on the cores, by conductor: an IEC 60757 code or the reader's own words; undefined for the usual. */
  readonly colours: readonly (string | undefined)[];
  readonly stock: Stock | undefined;
}

/** A row of the conductor table. */
interface SheetRow {
  readonly line: Line | 'spare';
  readonly from: string;
  readonly to: string;
  readonly isShield: boolean;
  readonly code: string;
  readonly colour: string;
}

/** A length with what it is for, how far it can be trusted, and why. */
interface SheetLength {
  readonly what: string;
  readonly metres: readonly [least: number, most: number];
  readonly status: Status;
}

/** A caution: the identifier of the full text in the reference, and its gist. */
interface SheetCaution {
  readonly id: string;
  readonly gist: string;
}

/** One end of the lead, for its drawing and its heading. */
interface SheetEnd {
  readonly side: Side;
  readonly connector: Connector;
  readonly form: Form;
  readonly body: PlugBody;
  readonly heading: string;
  readonly view: string;
}

/** A whole sheet. `problems` are flags to read before cutting. */
export interface CableSheet {
  readonly title: string;
  readonly ends: Readonly<Record<Side, SheetEnd>>;
  readonly mirrorWarning: string | undefined;
  readonly rows: readonly SheetRow[];
  readonly cutMetres: number;
  readonly cutWords: string;
  readonly lengths: readonly SheetLength[];
  readonly problems: readonly string[];
  readonly steps: readonly string[];
  readonly cautions: readonly SheetCaution[];
  readonly proof: readonly ProofRow[];
  /** Every two contacts, for the full table on request. */
  readonly fullProof: readonly ProofPlace[];
}

/** Slack on the cut length: a share, and at least this at each plug for a second try (common practice). */
const SLACK_SHARE = 0.02;
const SLACK_METRES_A_PLUG = 0.05;

/** Strip lengths, all common practice. */
export const STRIP_LENGTHS: readonly SheetLength[] = [
  { what: 'jacket', metres: [0.012, 0.02], status: 'P' },
  { what: 'core, tinned', metres: [0.003, 0.005], status: 'P' },
  { what: 'core into a DIN solder bucket', metres: [0.003, 0.003], status: 'P' },
];

/** Nothing chosen: straight plugs, usual colours, no stock named. */
export const NO_CHOICES: SheetChoices = {
  bodies: { from: 'straight', to: 'straight' },
  plugTakesMetres: {},
  colours: [],
  stock: undefined,
};

/** The line that each conductor of a lead carries in a link; 'spare' for all where the lead is in no link. */
export function linesOfLead(lead: Lead, link: Link | undefined): readonly (Line | 'spare')[] {
  const none = lead.conductors.map(() => 'spare' as const);
  if (!link) return none;
  const lines = conductorLines(link, linkCircuit(link, 'separate').parts);
  for (const [branch, { leads }] of link.branches.entries()) {
    const at = leads.findIndex(({ name }) => name === lead.name);
    if (at >= 0) return lines[branch]?.[at] ?? none;
  }
  return none;
}

/** Length to cut, metres: the planned length, two in a hundred more, and 5 cm a plug; rounded up to a centimetre. */
export function cutLength(lengthMetres: number): number {
  return Math.ceil((lengthMetres * (1 + SLACK_SHARE) + 2 * SLACK_METRES_A_PLUG) * 100 - 1e-9) / 100;
}

/** A strip length in words: '12 to 20 mm', '3 mm'. */
export function sayStrip({ metres: [least, most] }: SheetLength): string {
  const mm = (metres: number): string => String(Number((metres * 1e3).toFixed(1)));
  return least === most ? `${mm(least)} mm` : `${mm(least)} to ${mm(most)} mm`;
}

/** Make the sheet of a lead; `link` tells which line each conductor carries. */
export function cableSheet(
  lead: Lead,
  link: Link | undefined,
  choices: SheetChoices = NO_CHOICES,
): CableSheet {
  const lines = linesOfLead(lead, link);
  const rows = rowsOf(lead, lines, choices);
  const cutMetres = cutLength(lead.lengthMetres);
  const din = SIDES.some((side) => familyOf(lead[side].connector) === 'din');
  return {
    title: `${lead.name}: ${words(lead.from.connector)} to ${words(lead.to.connector)}`,
    ends: { from: endOf(lead, 'from', choices), to: endOf(lead, 'to', choices) },
    mirrorWarning: mirrorWarningOf(lead),
    rows,
    cutMetres,
    cutWords: `Cut ${cutMetres.toFixed(2)} m for a lead of ${lead.lengthMetres.toFixed(2)} m: 2 % and 5 cm a plug more (common practice).`,
    lengths: STRIP_LENGTHS.filter(({ what }) => din || !what.includes('DIN')),
    problems: problemsOf(lead, rows, choices),
    steps: stepsOf(lead, rows),
    cautions: cautionsOf(rows),
    proof: proofRows(lead),
    fullProof: leadPairs(lead).map(([a, b]) => ({ a, b, hold: 'still' })),
  };
}

/** Pins as they lie round a plug that is held with its key down, solder cups towards the eye (two secondary pages: status c). */
function mirrorWarningOf(lead: Lead): string | undefined {
  const connectors = SIDES.map((side) => lead[side].connector);
  const seven = connectors.includes('din7');
  if (!seven && !connectors.includes('din5')) return undefined;
  const order = seven
    ? 'from the lower left over the top to the lower right 6 1 4 2 5 3 7 (a 5-pin plug lacks 6 and 7)'
    : 'left to right 1 4 2 5 3';
  return `A DIN plug seen from the solder side is the mirror image of its pins seen from the front. Hold the plug with the key down and the solder cups towards you: ${order}.`;
}

function rowsOf(
  lead: Lead,
  lines: readonly (Line | 'spare')[],
  { colours, stock }: SheetChoices,
): readonly SheetRow[] {
  let next = 0;
  return lead.conductors.map((conductor: Conductor, at) => {
    const line = lines[at] ?? 'spare';
    const isShield = line === 'shield' && (stock === undefined || stock.shielded);
    const given = colours[at];
    const usual = isShield ? undefined : USUAL_COLOURS[next++ % USUAL_COLOURS.length];
    const code = given ?? usual ?? '';
    const known = COLOUR_CODES.find((one) => one === code);
    const colour = isShield && given === undefined ? 'the shield itself' : known ? colourWords(known) : code;
    return {
      line,
      from: contactWords(conductor.from),
      to: contactWords(conductor.to),
      isShield,
      code,
      colour,
    };
  });
}

function endOf(lead: Lead, side: Side, { bodies }: SheetChoices): SheetEnd {
  const { connector, form } = lead[side];
  const din = familyOf(connector) === 'din';
  const end = side === 'from' ? 'output end' : 'input end';
  return {
    side,
    connector,
    form,
    body: bodies[side],
    heading: `${end}: ${words(connector)} ${form}, ${bodies[side]}`,
    view: din ? 'solder side, key at the bottom' : 'from the side, tip to the left; not to scale',
  };
}

function problemsOf(
  lead: Lead,
  rows: readonly SheetRow[],
  { stock, plugTakesMetres, colours }: SheetChoices,
): readonly string[] {
  const found: string[] = [];
  const cores = rows.filter(({ isShield }) => !isShield).length;
  if (stock && stock.cores < cores)
    found.push(
      `This cable has too few cores: ${cores} needed beside the shield, ${stock.cores} in the cable.`,
    );
  if (stock && !stock.shielded)
    found.push(
      'This cable has no shield: the standard asks for shielded twisted pair. Short leads usually work without (common practice).',
    );
  for (const side of SIDES) {
    const takes = plugTakesMetres[side];
    if (stock && takes !== undefined && stock.outsideMetres > takes) {
      const mm = (metres: number): string => `${Number((metres * 1e3).toFixed(1))} mm`;
      found.push(
        `This cable is too thick for the plug at the ${side === 'from' ? 'output' : 'input'} end: ${mm(stock.outsideMetres)} cable, ${mm(takes)} at most.`,
      );
    }
  }
  const used = rows.map(({ code }) => code).filter((code) => code !== '');
  const twice = used.find((code, at) => used.indexOf(code) !== at);
  if (twice !== undefined)
    found.push(`Two conductors have the same colour, ${twice}: they cannot be told apart.`);
  if (colours.includes('GNYE'))
    found.push('Green and yellow together is kept for protective earth: use another core.');
  const adapter = lead.from.form === 'jack' || lead.to.form === 'jack';
  const most = adapter ? ADAPTER_METRES : STANDARD_METRES;
  if (lead.lengthMetres > most) found.push(`Longer than the standard's ${most} m: ${lead.lengthMetres} m.`);
  if (rows.length === 0) found.push('This lead has no conductors: draw them first.');
  return found;
}

function stepsOf(lead: Lead, rows: readonly SheetRow[]): readonly string[] {
  const list = sayList(
    rows.map(({ from, to, line }) => `${from} to ${to}${line === 'spare' ? '' : ` (${line})`}`),
  );
  const trs = SIDES.some((side) => familyOf(lead[side].connector) !== 'din');
  return [
    'Slide both plug shells and their sleeves onto the cable, the right way round, before anything is soldered.',
    'Cut, strip and tin as the table says; sleeve the shield where it leaves the jacket.',
    'Clamp the first plug. Read the drawing again: which side, where the key is.',
    `Solder one conductor at a time: ${list}.`,
    'Let each joint cool without moving it; tug each core gently.',
    trs
      ? 'Close the strain relief on the jacket, not on the cores; see that no strand touches the sleeve.'
      : 'Close the strain relief on the jacket, not on the cores.',
    'Do the other plug, then test the lead by the table below before it meets any device.',
  ];
}

function cautionsOf(rows: readonly SheetRow[]): readonly SheetCaution[] {
  const spare = rows.some(({ line }) => line === 'spare');
  return [
    { id: 'rules-come-first', gist: 'Local codes and qualified people come before this sheet.' },
    { id: 'fume', gist: 'Flux fume can cause asthma: extract or ventilate, head out of the plume.' },
    { id: 'lead-metal', gist: 'Solder with lead: wash your hands, no food at the bench.' },
    { id: 'burns', gist: 'The iron is at 300 to 400 °C: stand, eye protection, let joints cool.' },
    { id: 'power-off', gist: 'Test the lead before it meets equipment; plug it in with the power off.' },
    ...(spare
      ? [
          {
            id: 'powered-pins',
            gist: 'Spare pins may carry power in some devices: leave them out, or label the lead.',
          },
        ]
      : []),
  ];
}
