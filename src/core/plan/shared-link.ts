/**
 * The shared link: a whole plan in a piece of an address. The plan is written as lists in a fixed order with numbers for
 * words, packed with raw deflate, and spelt in base64url behind one letter for the version.
 */
import { PLAN } from './plan.ts';
import type { Plan } from './plan.ts';
import { readPlan } from './read-plan.ts';
import type { PlanReading } from './read-plan.ts';
import { fieldsOf, show } from './reading.ts';
import type { NamesOf } from './shape.ts';

/** Version letter of the packing. */
const PACKING = 'a';

/** Unpacked size above which a link is refused, bytes. */
const MOST_UNPACKED = 1_000_000;

/** Longest link that is looked at, characters. */
const MOST_PACKED = 100_000;

/** Write a plan into a link's text. */
export async function writeSharedLink(plan: Plan): Promise<string> {
  const jacks = new Map(plan.devices.map((one) => [one.name, one.jacks.map(({ name }) => name)]));
  const leads = plan.leads.map(({ name }) => name);
  const [packed] = PLAN.pack(plan, namesOf(jacks, leads), undefined);
  const bytes = new TextEncoder().encode(JSON.stringify(packed));
  return PACKING + toBase64Url(await throughStream(bytes, new CompressionStream('deflate-raw'), Infinity));
}

/** Read a plan from a link's text; never throws, a spoiled link is a reading with problems. */
export async function readSharedLink(text: string): Promise<PlanReading> {
  const bad = (expected: string, got: string): PlanReading => ({
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
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(unpacked));
    if (!Array.isArray(value)) return bad('a plan', show(value));
    return readPlan(PLAN.unpack([value], packedNames(value), undefined));
  } catch {
    return bad('a whole link', 'one that is cut short or changed');
  }
}

/** The names that numbers stand for, from the jacks of each device and the leads. */
function namesOf(jacks: ReadonlyMap<unknown, readonly unknown[]>, leads: readonly unknown[]): NamesOf {
  const devices = [...jacks.keys()];
  return (kind, holder) => {
    if (kind === 'devices') return devices;
    return kind === 'leads' ? leads : (jacks.get(fieldsOf(holder)?.['device']) ?? []);
  };
}

/** The same from a packed plan: its devices stand at 1, its leads at 2, a device's jacks at 1, and each name comes first. */
function packedNames(plan: unknown): NamesOf {
  const inside = (value: unknown, at: number): readonly unknown[] => {
    const found: unknown = Array.isArray(value) ? value[at] : undefined;
    return Array.isArray(found) ? found : [];
  };
  const first = (value: unknown): unknown => (Array.isArray(value) ? value[0] : undefined);
  const jacks = inside(plan, 1).map((device) => [first(device), inside(device, 1).map(first)] as const);
  return namesOf(new Map(jacks), inside(plan, 2).map(first));
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
