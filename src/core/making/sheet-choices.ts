/** What the reader chooses for a build sheet. */
import type { Side } from '../wiring/index.ts';

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

/** Nothing chosen: straight plugs, usual colours, no stock named. */
export const NO_CHOICES: SheetChoices = {
  bodies: { from: 'straight', to: 'straight' },
  plugTakesMetres: {},
  colours: [],
  stock: undefined,
};
