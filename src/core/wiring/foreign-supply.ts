/** A supply of something else that reaches the contacts of a jack. */
import type { Bench } from './build.ts';
import type { Jack } from './link.ts';
import { valueAt } from './link.ts';

/** Where a foreign supply may stand, with the nodes it joins; undefined where the jack has no such line. */
interface ForeignNodes {
  readonly source: string | undefined;
  readonly sink: string | undefined;
  readonly ground: string;
}

/** A foreign supply: its volts, and the two places it stands between. */
interface Foreign {
  readonly volts: number;
  readonly plus: 'source' | 'sink';
  readonly minus: 'sink' | 'ground';
}

const PLACES = [
  { name: 'foreignAcrossVolts', plus: 'source', minus: 'sink' },
  { name: 'foreignSourceVolts', plus: 'source', minus: 'ground' },
  { name: 'foreignSinkVolts', plus: 'sink', minus: 'ground' },
] as const;

/** Every foreign supply on a jack; there is none by default. */
export function foreignOn({ values }: Jack): readonly Foreign[] {
  return PLACES.flatMap(({ name, plus, minus }) => {
    const volts = values[name] ?? 0;
    return volts === 0 ? [] : [{ volts, plus, minus }];
  });
}

/** Add the foreign supplies of a jack, each behind its resistor; `prefix` begins their names. */
export function addForeign(bench: Bench, prefix: string, jack: Jack, nodes: ForeignNodes): void {
  for (const { volts, plus, minus } of foreignOn(jack)) {
    const [over, under] = [nodes[plus], nodes[minus]];
    if (over === undefined || under === undefined) continue;
    const name = `${prefix} foreign supply ${plus} ${minus}`;
    const feed = `${name} feed`;
    // Its own plus is at the feed whichever way round it stands, so that a path can be told from there.
    const [to, from] = volts > 0 ? [over, under] : [under, over];
    const supply = { kind: 'voltage', name, plus: feed, minus: from, volts: Math.abs(volts) } as const;
    bench.add('foreign-supply', supply);
    bench.resistor('foreign-resistor', `${name} resistor`, feed, to, valueAt(jack, 'foreignOhms'));
  }
}
