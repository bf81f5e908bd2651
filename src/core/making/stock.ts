/** The cable and the plugs that a reader may have: what is asked of them, and where the asking starts. */
import type { Stock } from './sheet-choices.ts';

/** Widest and narrowest cable that is asked for, and that a plug may take, metres (our choice: what a workshop has). */
export const CABLE_METRES: readonly [number, number] = [1e-3, 20e-3];

/** Fewest and most cores that a cable may have (our choice). */
export const CABLE_CORES: readonly [number, number] = [1, 32];

/** A cable to begin with when the reader says that there is one (our choice). */
export const FIRST_STOCK: Stock = { cores: 2, shielded: true, outsideMetres: 5e-3 };

/** Widest cable that a plug takes, to begin with, metres (our choice). */
export const FIRST_TAKES_METRES = 6e-3;
