/** A lead, or leads in series, drawn: connectors, conductors, arrows and labels as plain data. */
import { sayAmperes } from '../core/verdict/index.ts';
import { conductorWords, words } from '../core/wiring/index.ts';
import type { ChainInput, LeadDrawing, LeadEnd, LeadInput, LeadSegment } from './lead-shape.ts';
import { drawAlong } from './lead-layout.ts';

/**
 * Draws a lead or a chain of leads, ends side by side where `width` allows it and one above the other where it does not.
 * Throws when a conductor names a contact that its connector lacks, or when segments and joints do not match.
 */
export function drawLead(input: LeadInput | ChainInput): LeadDrawing {
  const chain: ChainInput =
    'segments' in input ? input : { width: input.width, segments: [input], joints: [] };
  if (chain.segments.length === 0 || chain.joints.length !== chain.segments.length - 1) {
    throw new RangeError(
      `lead drawing: there must be one joint fewer than segments, got ${chain.segments.length} segments and ${chain.joints.length} joints`,
    );
  }
  return { ...drawAlong(chain), textAlternative: chain.segments.map(segmentWords).join(' ') };
}

/** Widths tried for paper, pixels: the first at which the plugs stand side by side leaves most room below (our choice). */
const WIDTHS_ON_PAPER = [640, 720, 800, 900, 1000, 1120] as const;

/** Draws a lead for paper: as narrow as it can be with its plugs side by side. */
export function drawLeadOnPaper(lead: LeadSegment): LeadDrawing {
  const [narrowest, ...wider] = WIDTHS_ON_PAPER;
  let drawing = drawLead({ width: narrowest, ...lead });
  for (const width of wider) {
    if (drawing.layout === 'row') break;
    drawing = drawLead({ width, ...lead });
  }
  return drawing;
}

/** A lead in words that a listener could wire from. */
function segmentWords(segment: LeadSegment): string {
  const end = ({ connector, form, name }: LeadEnd) => `${name}, a ${words(connector)} ${form}`;
  const joined = segment.conductors.map((conductor) => {
    const { line = 'untold', amperes = null } = conductor;
    const ends = conductorWords(conductor);
    return line === 'untold'
      ? ends
      : `${ends} (${line}${amperes === null ? '' : `, ${directionWords(amperes)}`})`;
  });
  const what = joined.length === 0 ? 'no conductor yet' : joined.join('; ');
  return `From ${end(segment.from)}, to ${end(segment.to)}: ${what}.`;
}

function directionWords(amperes: number): string {
  const amount = sayAmperes(Math.abs(amperes));
  if (amount === '0 mA') return 'no current';
  return `${amount} from ${amperes > 0 ? 'left to right' : 'right to left'}`;
}
