/** The sheet to make a lead from: plain data that a page draws, prints and reads aloud. */
import { sayList } from '../verdict/index.ts';
import { SIDES, familyOf, words } from '../wiring/index.ts';
import type { Connector, Form, Lead, Link, Side } from '../wiring/index.ts';
import { cableWords } from './cable.ts';
import { STRIP_LENGTHS, cutLength } from './lengths.ts';
import type { SheetLength } from './lengths.ts';
import { proofRows } from './proof-rows.ts';
import type { ProofRow } from './proof-rows.ts';
import { NO_CHOICES } from './sheet-choices.ts';
import type { PlugBody, SheetChoices } from './sheet-choices.ts';
import { problemsOf } from './sheet-problems.ts';
import { rowsOf } from './sheet-rows.ts';
import type { SheetRow } from './sheet-rows.ts';

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
}

/** Make the sheet of a lead; `link` tells which line each conductor carries. */
export function cableSheet(
  lead: Lead,
  link: Link | undefined,
  choices: SheetChoices = NO_CHOICES,
): CableSheet {
  const rows = rowsOf(lead, link, choices);
  const cutMetres = cutLength(lead.lengthMetres);
  const din = SIDES.some((side) => familyOf(lead[side].connector) === 'din');
  return {
    title: `${lead.name}: ${words(lead.from.connector)} to ${words(lead.to.connector)}`,
    ends: { from: endOf(lead, 'from', choices), to: endOf(lead, 'to', choices) },
    mirrorWarning: mirrorWarningOf(lead),
    rows,
    cutMetres,
    cutWords: `Cut ${cutMetres.toFixed(2)} m of ${cableWords(rows)} for a lead of ${lead.lengthMetres.toFixed(2)} m: 2 % and 5 cm a plug more (common practice).`,
    lengths: STRIP_LENGTHS.filter(({ what }) => din || !what.includes('DIN')),
    problems: problemsOf(lead, rows, choices),
    steps: stepsOf(lead, rows),
    cautions: cautionsOf(rows),
    proof: proofRows(lead),
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

function stepsOf(lead: Lead, rows: readonly SheetRow[]): readonly string[] {
  const list = sayList(
    rows.map(({ from, to, line }) => `${from} to ${to}${line === 'spare' ? '' : ` (${line})`}`),
  );
  const trs = SIDES.some((side) => familyOf(lead[side].connector) !== 'din');
  return [
    'Slide both plug shells and their tubes onto the cable, the right way round, before anything is soldered.',
    'Cut, strip and tin as the table says; put tube over the shield where it leaves the jacket.',
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
    { id: 'lead-metal', gist: 'Leaded solder: wash your hands, no food at the bench.' },
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
