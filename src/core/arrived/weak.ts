/** Current at the edge of what an input needs: some of its pulses are not seen. */
import { readLine, sendBytes } from '../signal/index.ts';
import { codeOf } from './log.ts';
import type { Code } from './log.ts';
import { withoutPulses } from './line-changes.ts';
import type { Odds } from './compare.ts';

/** What a byte is read as when `gone` of its `pulses` stretches of 0 are not seen; `code` -1 where nothing is read. */
interface Reading {
  readonly code: Code;
  readonly gone: number;
  readonly pulses: number;
}

/** Every way to lose pulses of a byte, solved on the line when the byte is first met. */
const READINGS = new Map<number, readonly Reading[]>();

function readingsOf(byte: number): readonly Reading[] {
  const known = READINGS.get(byte);
  if (known) return known;
  const { wave } = sendBytes([byte]);
  const pulses = wave.edges.filter(({ level }) => !level).length;
  const readings = Array.from({ length: 2 ** pulses }, (_, lost): Reading => {
    let at = 0;
    const [first] = readLine(withoutPulses(wave, () => ((lost >> at++) & 1) === 0));
    let gone = 0;
    for (let pulse = 0; pulse < pulses; pulse += 1) gone += (lost >> pulse) & 1;
    return { code: first ? codeOf({ value: first.value, bad: first.kind !== 'byte' }) : -1, gone, pulses };
  });
  READINGS.set(byte, readings);
  return readings;
}

/** What a bit that is lost out of its place may do to the bytes around it, as a logarithm. */
const KNOCKED = Math.log(0.01 / 512);

/** A reader of messages drops a message whole when one of its bytes is gone, as a logarithm (our choice). */
const WHOLE_MESSAGE = Math.log(0.4);

/** Odds of a byte when each of its pulses is missed with a chance of `share`; `marked`: the monitor marks bad bytes. */
export function weakOdds(sent: readonly Code[], share: number, marked: boolean): Odds {
  const tables = new Map<number, ReadonlyMap<Code, number>>();
  const tableOf = (byte: number): ReadonlyMap<Code, number> => {
    const known = tables.get(byte);
    if (known) return known;
    const table = new Map<Code, number>();
    for (const { code, gone, pulses } of readingsOf(byte)) {
      const shown = marked || code < 0 ? code : code & 0xff;
      table.set(shown, (table.get(shown) ?? 0) + share ** gone * (1 - share) ** (pulses - gone));
    }
    for (const [code, chance] of table) table.set(code, Math.log(chance));
    tables.set(byte, table);
    return table;
  };
  return {
    pair: (at, code) => Math.max(KNOCKED, tableOf(sent[at] ?? 0).get(code) ?? -Infinity),
    lost: (at) => Math.max(KNOCKED, tableOf(sent[at] ?? 0).get(-1) ?? -Infinity),
    extra: () => KNOCKED,
    lostAgain: WHOLE_MESSAGE,
  };
}
