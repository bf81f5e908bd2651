/** The shape of a drawing of a lead, or of leads in series: what it is drawn from, and what a component puts on the page. */
import type { Conductor, Connector, Contact, Form, Side, View } from '../core/wiring/index.ts';
import type { FaceContact, Outline } from './face.ts';
import type { Box, Point } from './geometry.ts';
import type { JointTouch } from './joint.ts';
import type { LineKind } from './stroke.ts';
import type { TextLine } from './text.ts';

/** One end of a lead: `name` is printed under it ('left plug', 'Keys OUT'). */
export interface LeadEnd {
  readonly connector: Connector;
  readonly form: Form;
  readonly view: View;
  readonly name: string;
}

/**
 * A conductor from a contact of one end to one of the other: one without a line is 'untold', and called by what it joins. `amperes`
 * counts from `from` to `to`; null, or left out, is 'not known'.
 */
export interface ConductorInput extends Conductor {
  readonly line?: LineKind;
  readonly amperes?: number | null;
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
