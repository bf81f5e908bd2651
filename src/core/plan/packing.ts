/** The end of an address as it holds data: JSON, packed with raw deflate, spelt in base64url behind one letter for the version. */
import type { Problem } from './reading.ts';

/** Version letter of the packing. */
const PACKING = 'a';

/** Unpacked size above which a link is refused, bytes. */
const MOST_UNPACKED = 1_000_000;

/** Longest link that is looked at, characters. */
const MOST_PACKED = 100_000;

/** What a link held, to be looked at by who asked, or why it cannot be had. */
type Unpacked =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The reading of a link that unpacks to nothing whole. */
export const CHANGED_LINK = {
  ok: false,
  problems: [{ place: 'the link', expected: 'a whole link', got: 'one that is cut short or changed' }],
} as const satisfies Unpacked;

/** Write a value that JSON can hold into a link's text. */
export async function packLink(value: unknown): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(value));
  return PACKING + toBase64Url(await throughStream(bytes, new CompressionStream('deflate-raw'), Infinity));
}

/** The value in a link's text; never throws, a spoiled link is a problem. */
export async function unpackLink(text: string): Promise<Unpacked> {
  const bad = (expected: string, got: string): Unpacked => ({
    ok: false,
    problems: [{ place: 'the link', expected, got }],
  });
  if (text.length > MOST_PACKED) return bad(`at most ${MOST_PACKED} characters`, `${text.length} characters`);
  if (!text.startsWith(PACKING))
    return bad(
      'a link made by this workbook',
      text === '' ? 'nothing' : `one that begins with '${text.slice(0, 1)}'`,
    );
  try {
    const bytes = fromBase64Url(text.slice(1));
    const unpacked = await throughStream(bytes, new DecompressionStream('deflate-raw'), MOST_UNPACKED);
    return {
      ok: true,
      value: JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(unpacked)) as unknown,
    };
  } catch {
    return CHANGED_LINK;
  }
}

async function throughStream(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader();
  const chunks: Uint8Array<ArrayBuffer>[] = [];
  for (let length = 0; ;) {
    const { done, value } = await reader.read();
    if (done) return new Uint8Array(await new Blob(chunks).arrayBuffer());
    length += value.length;
    if (length > most) {
      await reader.cancel();
      throw new Error(`link: unpacks to more than ${most} bytes`);
    }
    chunks.push(value);
  }
}

function toBase64Url(bytes: Uint8Array): string {
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(text).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> {
  const plain = atob(text.replace(/-/g, '+').replace(/_/g, '/'));
  return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
}
