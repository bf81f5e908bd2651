/** Every jack that a meter may meet: the whole catalogue for one connector, and the jacks that are no control jacks. */
import { USUAL_PARTS, hasLed } from '../wiring/index.ts';
import type { Connector } from '../wiring/index.ts';
import type { Direction } from '../wiring/index.ts';
import { DIRECTIONS, circuitsFor, makeJack, stylesFor } from '../wiring/index.ts';
import { OTHER_JACKS, otherJackSuits } from '../wiring/index.ts';
import type { JackUnderTest } from './subjects.ts';

const KNOWN = new Map<Connector, readonly JackUnderTest[]>();

/** Every jack with this connector, by direction, style, circuit and part; then the others. Always the same objects. */
export function jacksWith(connector: Connector): readonly JackUnderTest[] {
  const known = KNOWN.get(connector);
  if (known) return known;
  const made = makeJacks(connector);
  KNOWN.set(connector, made);
  return made;
}

function makeJacks(connector: Connector): readonly JackUnderTest[] {
  const control = DIRECTIONS.flatMap((direction: Direction) =>
    stylesFor(direction, connector).flatMap((style) =>
      circuitsFor(direction, style)
        .filter((circuit) => circuit !== 'driver-off')
        .flatMap((circuit) =>
          (hasLed(circuit) ? USUAL_PARTS : (['6N138'] as const)).map((part): JackUnderTest => ({
            kind: 'control',
            jack: makeJack(direction, connector, style, { circuit, part }),
          })),
        ),
    ),
  );
  const others = OTHER_JACKS.filter((other) => otherJackSuits(other, connector)).map(
    (other): JackUnderTest => ({ kind: 'other', other, connector }),
  );
  return [...control, ...others];
}
