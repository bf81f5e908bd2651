/** Colour codes of IEC 60757 (read in a national adoption of IEC 757:1983: status c). */

/** Codes in the order of the table, which is the order in which two colours on one core are joined. */
export const COLOUR_CODES = [
  'BK',
  'BN',
  'RD',
  'OG',
  'YE',
  'GN',
  'BU',
  'VT',
  'GY',
  'WH',
  'PK',
  'GD',
  'TQ',
  'SR',
  'GNYE',
] as const;

/** A code of the table. */
type ColourCode = (typeof COLOUR_CODES)[number];

const WORDS: Readonly<Record<ColourCode, string>> = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  GD: 'gold',
  TQ: 'turquoise',
  SR: 'silver',
  GNYE: 'green and yellow',
};

/** A code in words. */
export function colourWords(code: ColourCode): string {
  return WORDS[code];
}

/** Colours given to cores where the reader has said nothing (our choice; red first, black and blue last). GNYE is never among them. */
export const USUAL_COLOURS: readonly ColourCode[] = ['RD', 'WH', 'BU', 'YE', 'GN', 'BN', 'OG', 'BK'];
