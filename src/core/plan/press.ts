/** What one press sends, as the owner lists it. */

/** What can be sent to a device at one press. */
export const PRESS_KINDS = ['program', 'bank', 'control'] as const;

/** One message of a press, in the owner's order. Programs count from 1 to 128, banks from 0, as most manuals print them. */
export type PressItem =
  | { readonly device: string; readonly send: 'program'; readonly program: number }
  | { readonly device: string; readonly send: 'bank'; readonly bank: number }
  | {
      readonly device: string;
      readonly send: 'control';
      readonly controller: number;
      readonly value: number;
    };

/** Ranges of the numbers of a press. */
export const PRESS_RANGES = {
  program: [1, 128],
  bank: [0, 16383],
  controller: [0, 119],
  value: [0, 127],
} as const;
