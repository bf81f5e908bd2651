/**
 * Devices in the reader's own words, one a line: a name, then its jacks. 'loop station: DIN in and thru' is a device with two jacks;
 * what is not understood is said, word by word, and half a jack is a question and never a guess.
 */
import { PLAN_LIMITS, onlyCarries, wholeDevice } from '../plan/index.ts';
import type { Device, DeviceKind, PlanJack } from '../plan/index.ts';
import { styleEntry, words } from '../wiring/index.ts';
import { Stopped, readTold } from './device-told.ts';
import type { LineProblem } from './device-told.ts';
import { jacksOf } from './device-jacks.ts';
import { asTyped, jackWords, meaningOf, partedName } from './device-words.ts';

/** One line as it was read. `line` counts from 1 over the whole text; lines with nothing on them are not among them. */
type DeviceLine = {
  readonly line: number;
  readonly text: string;
} & ({ readonly ok: true; readonly device: Device } | { readonly ok: false; readonly problem: LineProblem });

/** Outer size of a device that only its jacks are known of, centimetres (our choice): a small pedal, wider with its jacks. */
const BODY = { least: 9, jack: 3, depth: 12 } as const;

/** What a name says of its device; the first that fits. */
const KINDS: readonly (readonly [RegExp, DeviceKind])[] = [
  [/\b(hub|splitter|thru[\s-]?box)\b/i, 'hub'],
  [/\b(merger|merge)\b/i, 'merger'],
  [/\bconverter\b/i, 'converter'],
  [/\b(controller|switcher|foot\s?switch|footswitch)\b/i, 'controller'],
  [/\b(computer|laptop)\b/i, 'computer'],
  [/\b(synth|synthesi[sz]er|keyboard|piano|sampler|drum machine|module|rack)\b/i, 'instrument'],
];

/** Read a text, a device a line; a number or a dash before a name is no part of it. */
export function readDeviceLines(text: string): readonly DeviceLine[] {
  return text.split(/\r?\n/).flatMap((line, at): DeviceLine[] => {
    const plain = line.replace(/^\s*(?:\d+[.)]|[-*•–])\s+/, '').trim();
    if (plain === '') return [];
    const head = { line: at + 1, text: line.trim() };
    try {
      return [{ ...head, ok: true, device: readDevice(plain) }];
    } catch (error) {
      if (!(error instanceof Stopped)) throw error;
      const { word, expected } = error.problem;
      return [{ ...head, ok: false, problem: { word: asTyped(plain, [word]), expected } }];
    }
  });
}

/** What is wrong with a line, in words. */
export function sayLineProblem(line: number, { word, expected }: LineProblem): string {
  return `Line ${line}${word === '' ? '' : `, at '${word}'`}: expected ${expected}.`;
}

/** A device in words, as it was understood. */
export function sayDevice(device: Device): string {
  const { name, kind, talks, channel, jacks } = wholeDevice(device);
  const said = jacks.map(({ name: jack, connector, style, styles }) => {
    const types = (styles.length > 0 ? styles : [style]).map((one) => styleEntry(one).label).join(' or ');
    return `${jack} on ${words(connector)}${style === 'din' ? '' : `, ${types}`}`;
  });
  const joined = talks === 'usb-only' ? ['USB only'] : talks === 'wireless' ? ['wireless'] : said;
  return `${name}, ${kind}${channel > 0 ? `, channel ${channel}` : ''}: ${joined.join('; ')}`;
}

function readDevice(text: string): Device {
  const [channel, rest] = readChannel(text);
  const [head, tail] = partedName(rest);
  const name = head.replace(/[\s,;–-]+$/, '').trim();
  if (name === '') throw new Stopped(text.split(/\s/)[0] ?? '', 'a name before the jacks, then a colon');
  if (name.length > PLAN_LIMITS.nameCharacters)
    throw new Stopped(name, `a name of at most ${PLAN_LIMITS.nameCharacters} characters`);
  const parts = jackWords(tail);
  const talks = parts
    .flat()
    .map(meaningOf)
    .find((one) => one?.says === 'other')?.talks;
  const told = readTold(parts, (words) => asTyped(tail, words));
  if (told.length === 0 && talks === undefined)
    throw new Stopped('', `jacks after the name, such as '${name}: DIN in and thru'`);
  const jacks = placed(jacksOf(told));
  if (jacks.length > PLAN_LIMITS.jacks)
    throw new Stopped(tail.trim(), `at most ${PLAN_LIMITS.jacks} jacks, and these are ${jacks.length}`);
  const kind = kindOf(name, jacks);
  return {
    name,
    kind,
    widthCentimetres: Math.max(BODY.least, BODY.jack * (holesOf(jacks) + 1)),
    depthCentimetres: BODY.depth,
    jacks,
    ...(jacks.length === 0 && talks ? { talks } : {}),
    ...(channel > 0 && !onlyCarries({ kind }) ? { channel } : {}),
  };
}

/** The channel that a line names, 0 for none, and the line without it. */
function readChannel(text: string): readonly [number, string] {
  const found = /[\s,(]*\b(?:channel|chan|ch)\.?\s*(\d+)\b\)?/i.exec(text);
  if (!found) return [0, text];
  const channel = Number(found[1]);
  if (channel < 1 || channel > PLAN_LIMITS.channel)
    throw new Stopped(found[0].trim(), `a channel from 1 to ${PLAN_LIMITS.channel}`);
  return [channel, text.replace(found[0], '')];
}

const holesOf = (jacks: readonly PlanJack[]): number =>
  jacks.filter(({ sharesHole = '', direction }) => sharesHole === '' || direction === 'in').length;

/** Jacks side by side along the back; the two of one hole at one place. */
function placed(jacks: readonly PlanJack[]): readonly PlanJack[] {
  const width = Math.max(BODY.least, BODY.jack * (holesOf(jacks) + 1));
  const step = width / (holesOf(jacks) + 1);
  return jacks.map((jack, at) => ({
    ...jack,
    alongCentimetres: Math.round(10 * step * Math.max(1, holesOf(jacks.slice(0, at + 1)))) / 10,
  }));
}

function kindOf(name: string, jacks: readonly PlanJack[]): DeviceKind {
  const said = KINDS.find(([pattern]) => pattern.test(name))?.[1];
  if (said) return said;
  const sends = jacks.length > 0 && jacks.every(({ direction }) => direction === 'out');
  return sends && jacks.some(({ role = 'plain' }) => role !== 'thru') ? 'controller' : 'pedal';
}
