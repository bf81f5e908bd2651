/** Every kind of jack that a meter may meet with one connector: control jacks by direction, style and circuit, and the others. */
import {
  DIRECTIONS,
  OTHER_JACKS,
  circuitsFor,
  makeJack,
  otherJackSuits,
  stylesFor,
} from '../wiring/index.ts';
import type { Connector } from '../wiring/index.ts';
import type { JackUnderTest } from './subjects.ts';

const KNOWN = new Map<Connector, readonly JackUnderTest[]>();

/** Every jack with this connector; always the same objects. Which optocoupler is behind an input no meter can tell. */
export function jacksWith(connector: Connector): readonly JackUnderTest[] {
  const known = KNOWN.get(connector);
  if (known) return known;
  const control = DIRECTIONS.flatMap((direction) =>
    stylesFor(direction, connector).flatMap((style) =>
      circuitsFor(direction, style)
        .filter((circuit) => circuit !== 'driver-off')
        .map((circuit): JackUnderTest => ({
          kind: 'control',
          jack: makeJack(direction, connector, style, { circuit }),
        })),
    ),
  );
  const others = OTHER_JACKS.filter((other) => otherJackSuits(other, connector)).map(
    (other): JackUnderTest => ({ kind: 'other', other, connector }),
  );
  const made = [...control, ...others];
  KNOWN.set(connector, made);
  return made;
}
