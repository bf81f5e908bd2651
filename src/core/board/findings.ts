/** What a check of a board can find; each finding says what, where, why and how to mend it. */

export const FINDING_KINDS = [
  'split',
  'fed-twice',
  'ring',
  'two-controllers',
  'no-controller',
  'unreached',
  'does-not-fit',
  'no-passive-lead',
  'link-fails',
  'weak',
  'over-rating',
  'too-deep',
  'too-short',
  'too-long',
  'supply-on-spares',
  'no-supply',
  'grounds',
  'same-channel',
  'hears-all',
  'hub-full',
  'lead-twice',
  'breakout',
  'not-a-wire',
  'unproven-depth',
] as const;
export type FindingKind = (typeof FINDING_KINDS)[number];

/** Errors stop the board; warnings may; notes are worth knowing. */
export const SEVERITIES = ['error', 'warning', 'note'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** Where a finding is: names of links or of devices. */
export interface Where {
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
  where: Partial<Where>,
  words: Pick<Finding, 'what' | 'why' | 'mend'>,
): Finding {
  return { kind, severity, where: { links: where.links ?? [], devices: where.devices ?? [] }, ...words };
}

/** A jack in words. */
export function sayJack({ device, jack }: { readonly device: string; readonly jack: string }): string {
  return `${jack} of '${device}'`;
}
