/** The way back from paper to the lead on a screen: the site's address as the reader sets it, and the code of squares that holds it. */
import { shortPlanOfLead } from '../../src/core/making/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { planHash } from '../keep/plan-files.ts';
import { squareCode } from '../parts/square-code.ts';
import type { SquareCode } from '../parts/square-code.ts';

/** What may stand on the sheet to find the lead again. */
export const WAYS_BACK = ['qr', 'code', 'nothing'] as const;
/** One of these ways. */
export type WayBack = (typeof WAYS_BACK)[number];

/** Widest code that has room beside the drawing, millimetres; a longer link gets the code to type alone. */
const MOST_MM = 36;

/** How a sheet of paper says where its lead is to be found again. */
export interface WayBackOnPaper {
  readonly square: SquareCode | undefined;
  /** What the square code opens. */
  readonly address: string;
  /** The lead as letters to type, where it has such a code. */
  readonly letters: string | undefined;
}

/** An address typed by the reader as it is used, or why it cannot be. Empty text stands for the page's own. */
export function siteAddress(
  typed: string,
  own: string,
): { readonly address?: string; readonly problem?: string } {
  const text = typed.trim();
  if (text === '') return { address: own };
  try {
    const { protocol, origin, pathname } = new URL(text);
    if (protocol === 'http:' || protocol === 'https:')
      return { address: origin + pathname.replace(/\/+$/, '') };
  } catch {
    // Falls to the message below: what cannot be read is no address either.
  }
  return { problem: `address: expected one that begins with https:// or http://, got '${text}'` };
}

/** The address that opens one lead of a plan on the build sheet. */
export async function leadAddress(site: string, plan: Plan, lead: string): Promise<string> {
  return `${site}/cable-sheet/${await planHash(shortPlanOfLead(plan, lead))}`;
}

/** The square code of an address, or undefined when it would be too large to print beside the drawing. */
export function leadSquare(address: string): Promise<SquareCode | undefined> {
  return squareCode(address, MOST_MM);
}
