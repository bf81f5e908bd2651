/**
 * What every drawing of a connector consists of.
 */
import type { Contact } from '../core/wiring/index.ts';
import type { Box, Exit, Point } from './geometry.ts';
import type { Anchor } from './text.ts';

/** 'outline' 1.6 px ink, 'hatch' cut metal or plastic, 'hairline' a thin line, 'fill' solid ink, 'sheet' paper that hides what is under it. */
type OutlineKind = 'outline' | 'hatch' | 'hairline' | 'fill' | 'sheet' | 'ghost';

/** A shape of a drawing, as an SVG path string in pixels, with how it is drawn. */
export interface Outline {
  readonly d: string;
  readonly kind: OutlineKind;
}

/** A contact as drawn: `d` is what is seen, `touch` the larger shape that answers to a finger, `box` the room of what is seen. */
export interface FaceContact {
  readonly contact: Contact;
  readonly x: number;
  readonly y: number;
  readonly d: string;
  readonly touch: string;
  readonly box: Box;
  /** Radius in pixels of a round contact; undefined for a segment, lug or shell. */
  readonly radius?: number;
  readonly label: {
    readonly x: number;
    readonly y: number;
    readonly text: string;
    readonly anchor: Anchor;
    readonly size: number;
  };
  /** Where a conductor is joined when it leaves by the plainest way, and which way it starts, radians (0 right, quarter turn down). */
  readonly port: { readonly x: number; readonly y: number; readonly direction: number };
}

/** The face or profile of a connector, in pixels. */
export interface FaceDrawing {
  readonly width: number;
  readonly height: number;
  /** Left top corner; the drawing's own origin is the middle of a DIN face or of a phone plug. */
  readonly x: number;
  readonly y: number;
  readonly outlines: readonly Outline[];
  readonly contacts: readonly FaceContact[];
  readonly caption: string;
  readonly textAlternative: string;
}

/** Ways from a contact's rim to the edge of a block: points in pixels, the last one on the edge. */
export type Route = readonly Point[];

/** One set of ways out that do not cross one another, and what each costs to look at, counted in crossings (0 where left out). */
export interface Escape {
  readonly routes: Readonly<Partial<Record<Contact, Route>>>;
  readonly costs: Readonly<Partial<Record<Contact, number>>>;
}

/** A connector with room for its conductors, at its place in a drawing. */
export interface Block {
  readonly exit: Exit;
  readonly outlines: readonly Outline[];
  readonly contacts: readonly FaceContact[];
  /** All that is drawn and every way out. */
  readonly bounds: Box;
  readonly escapes: readonly Escape[];
  readonly caption: string;
  readonly textAlternative: string;
}
