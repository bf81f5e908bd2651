/** Bytes of a file as text, whatever an editor wrote: UTF-8 or UTF-16, with or without a byte order mark. */

/** How many bytes at the start are looked at for the zeros that UTF-16 leaves between plain letters. */
const LOOKED_AT = 64;

/** Text of the bytes; what is no text in that code becomes the mark for it, which no plan holds. */
export function textOf(bytes: Uint8Array): string {
  return new TextDecoder(codeOf(bytes)).decode(bytes);
}

/** The code that a byte order mark names, else the one whose high bytes are zero, as those of braces and quotes are. */
function codeOf(bytes: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const start = bytes.subarray(0, LOOKED_AT);
  const zeros = [0, 1].map((odd) => start.filter((byte, at) => byte === 0 && at % 2 === odd).length);
  const [even = 0, odd = 0] = zeros;
  if (even === odd) return 'utf-8';
  return odd > even ? 'utf-16le' : 'utf-16be';
}
