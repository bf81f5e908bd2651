/** A stripped core in the solder cup of a DIN pin: how much metal stays bare above it, and whether that can reach the next pin. */
import { CUP_METRES } from './lengths.ts';

/** Pitch circle of a 5-pin DIN plug, 7.0 mm across, and the angle between two of its pins (a museum's reference page: status c). */
const PITCH_RADIUS_METRES = 3.5e-3;
const PIN_STEP_RADIANS = Math.PI / 4;

/** Thickness of a pin, metres (the same page: status c). */
export const PIN_METRES = 1.45e-3;

/** Free room between two neighbouring pins, metres: the chord between their middles less one pin (worked out). */
export const PIN_GAP_METRES = 2 * PITCH_RADIUS_METRES * Math.sin(PIN_STEP_RADIANS / 2) - PIN_METRES;

/** Bare ends that may be tried, metres (our choice): from next to nothing to far too much. */
export const BARE_END_METRES = { least: 1e-3, most: 6e-3 } as const;

/** Less bare core than this share of the cup is a joint on its rim (our choice). */
const LEAST_SHARE = 0.8;

/** How a bare end fits its cup. `outsideMetres` is the bare metal above the cup. */
interface BareEnd {
  readonly fit: 'too short' | 'right' | 'too long' | 'can touch';
  readonly outsideMetres: number;
}

/**
 * Judge a core that is stripped by so many metres, for the cup of a DIN pin.
 * @throws when the length is out of `BARE_END_METRES`.
 */
export function bareEnd(bareMetres: number): BareEnd {
  const { least, most } = BARE_END_METRES;
  if (!(bareMetres >= least - 1e-9 && bareMetres <= most + 1e-9))
    throw new Error(`bare end: length must be from ${least} m to ${most} m, got ${bareMetres} m`);
  const outsideMetres = Math.max(0, bareMetres - CUP_METRES);
  if (bareMetres < LEAST_SHARE * CUP_METRES) return { fit: 'too short', outsideMetres };
  // A tenth of a millimetre is less than anybody strips to.
  if (outsideMetres < 1e-4) return { fit: 'right', outsideMetres: 0 };
  return { fit: outsideMetres > PIN_GAP_METRES ? 'can touch' : 'too long', outsideMetres };
}

/** How a bare end fits, in one sentence. */
export function sayBareEnd({ fit, outsideMetres }: BareEnd): string {
  const mm = (metres: number): string => `${(metres * 1e3).toFixed(1)} mm`;
  switch (fit) {
    case 'too short':
      return 'Too short: the solder holds it by the rim of the cup, and the plastic may melt into the joint.';
    case 'right':
      return 'Right: all the bare metal is in the cup.';
    case 'too long':
      return `Too long: ${mm(outsideMetres)} stays bare above the cup. It bends where it is stiff, and breaks there.`;
    case 'can touch':
      return `It can touch: ${mm(outsideMetres)} stays bare, and the next pin is only ${mm(PIN_GAP_METRES)} away.`;
  }
}
