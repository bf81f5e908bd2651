/** What a check of a board can find; each finding says what, where, why and how to mend it. */

/** What is found, in words that a page can choose an icon and a place by. */
export type FindingKind =
  | 'split'
  | 'fed-twice'
  | 'ring'
  | 'two-controllers'
  | 'no-controller'
  | 'unreached'
  | 'does-not-fit'
  | 'no-passive-lead'
  | 'link-fails'
  | 'not-solved'
  | 'weak'
  | 'over-rating'
  | 'foreign-supply'
  | 'too-deep'
  | 'too-short'
  | 'too-long'
  | 'supply-on-spares'
  | 'no-supply'
  | 'grounds'
  | 'off-standard'
  | 'same-channel'
  | 'hears-all'
  | 'hub-full'
  | 'lead-twice'
  | 'breakout'
  | 'not-a-wire'
  | 'unproven-depth';

/** Errors stop the board; warnings may; notes are worth knowing. Worst first. */
export const SEVERITIES = ['error', 'warning', 'note'] as const;
/** How much a finding weighs. */
export type Severity = (typeof SEVERITIES)[number];

/** Where a finding is: names of links or of devices. */
interface Where {
  readonly links: readonly string[];
  readonly devices: readonly string[];
}

/** One finding, in words for the owner of the board. */
export interface Finding {
  readonly kind: FindingKind;
  readonly severity: Severity;
  readonly where: Where;
  readonly what: string;
  readonly why: string;
  readonly mend: string;
}

/** A finding at these links and devices. */
export function finding(
  kind: FindingKind,
  severity: Severity,
  { links = [], devices = [] }: Partial<Where>,
  words: Pick<Finding, 'what' | 'why' | 'mend'>,
): Finding {
  return { kind, severity, where: { links, devices }, ...words };
}

/** Names in a row, each in quotes: "'drive' and 'looper'". */
export function quoted(names: readonly string[], between = ', '): string {
  return names.map((name) => `'${name}'`).join(between);
}
