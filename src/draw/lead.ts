/**
 * A lead, or leads in series: connectors, conductors, arrows and labels as plain data that a component puts on the page.
 */
import type { Connector, Contact, Form, Side } from '../core/wiring/index.ts';
import { contactWords, words } from '../core/wiring/index.ts';
import type { FaceContact, Outline, View } from './face.ts';
import type { Box, Point } from './geometry.ts';
import type { JointTouch } from './joint.ts';
import { drawAlong } from './lead-layout.ts';
import type { LineKind } from './stroke.ts';
import { milliampereWords } from './stroke.ts';
import type { TextLine } from './text.ts';

/** One end of a lead: `name` is printed under it ('left plug', 'Keys OUT'). */
export interface LeadEnd {
  readonly connector: Connector;
  readonly form: Form;
  readonly view: View;
  readonly name: string;
}

/** A conductor from a contact of one end to one of the other. `amperes` counts that way; null is 'not known'. */
export interface ConductorInput {
  readonly from: Contact;
  readonly to: Contact;
  readonly line: LineKind;
  readonly amperes: number | null;
  /** Replaces the line and its current as the label. */
  readonly label?: string;
}

/** One lead of a chain. */
export interface LeadSegment {
  readonly from: LeadEnd;
  readonly to: LeadEnd;
  readonly conductors: readonly ConductorInput[];
}

/** One lead to draw on `width` pixels. */
export interface LeadInput extends LeadSegment {
  readonly width: number;
}

/** Where the end of one lead meets the beginning of the next: which contacts touch. */
export interface LeadJoint {
  readonly name: string;
  readonly touches: readonly JointTouch[];
}

/** Leads in series: one joint fewer than segments. */
export interface ChainInput {
  readonly width: number;
  readonly segments: readonly LeadSegment[];
  readonly joints: readonly LeadJoint[];
}

/** An end as drawn. */
export interface DrawnEnd {
  readonly segment: number;
  readonly side: Side;
  readonly connector: Connector;
  readonly form: Form;
  readonly name: string;
  readonly caption: string;
  readonly outlines: readonly Outline[];
  readonly contacts: readonly FaceContact[];
  /** Name and caption, to be printed. */
  readonly text: readonly TextLine[];
  readonly textAlternative: string;
}

/** A conductor as drawn. */
export interface DrawnConductor {
  readonly segment: number;
  /** Place in the segment's own list of conductors. */
  readonly index: number;
  readonly from: Contact;
  readonly to: Contact;
  readonly line: LineKind;
  readonly amperes: number | null;
  readonly d: string;
  /** Stroke weight, pixels. */
  readonly weight: number;
  /** Closed paths that show which way the current goes; none without current. */
  readonly arrows: readonly string[];
  /** Where it is joined: both ends, and where it parts from another conductor of the same contact. */
  readonly dots: readonly Point[];
  readonly label: readonly TextLine[];
  readonly labelBox: Box;
}

/** Everything there is to see, in pixels from the left top corner. */
export interface LeadDrawing {
  readonly width: number;
  readonly height: number;
  readonly layout: 'row' | 'stack';
  readonly ends: readonly DrawnEnd[];
  readonly joints: readonly { readonly text: readonly TextLine[] }[];
  readonly conductors: readonly DrawnConductor[];
  /** How often one conductor crosses another. */
  readonly crossings: number;
  readonly textAlternative: string;
}

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

/** A lead in words that a listener could wire from. */
export function segmentWords(segment: LeadSegment): string {
  const end = ({ connector, form, name }: LeadEnd) => `${name}, a ${words(connector)} ${form}`;
  const joined = segment.conductors.map(
    ({ from, to, line, amperes }) =>
      `${contactWords(from)} to ${contactWords(to)} (${line}${amperes === null ? '' : `, ${directionWords(amperes)}`})`,
  );
  const what = joined.length === 0 ? 'no conductor yet' : joined.join('; ');
  return `From ${end(segment.from)}, to ${end(segment.to)}: ${what}.`;
}

function directionWords(amperes: number): string {
  const amount = milliampereWords(amperes);
  if (amount === '0 mA') return 'no current';
  return `${amount} from ${amperes > 0 ? 'left to right' : 'right to left'}`;
}
