/** Jacks of a board with their devices: where they are, what they can be set to, and the way between two. */
import { findJack, isPlaced, jackPoint, leadMetres, wholeDevice, wholeJack } from '../plan/index.ts';
import type { JackPlace, Plan, PlanJack, WholeDevice, WholeJack, waysRound } from '../plan/index.ts';
import { settleJack, stylesFor } from '../wiring/index.ts';
import type { Style } from '../wiring/index.ts';

/** A jack of the plan with its device, both whole. */
export interface JackOnBoard {
  readonly device: WholeDevice;
  readonly jack: WholeJack;
}

/** A jack in words. */
export function sayJack({ device, jack }: JackPlace): string {
  return `${jack} of '${device}'`;
}

/** Whether two places are the same jack. */
export function samePlace(one: JackPlace, other: JackPlace): boolean {
  return one.device === other.device && one.jack === other.jack;
}

/** The jack at a place. @throws when the plan has none. */
export function jackAt(plan: Plan, place: JackPlace): JackOnBoard {
  const device = plan.devices.find(({ name }) => name === place.device);
  const jack = findJack(plan, place);
  if (!device || !jack) throw new Error(`board: no jack '${place.jack}' on a device '${place.device}'`);
  return { device: wholeDevice(device), jack: wholeJack(jack) };
}

/** The styles a jack can have, the one it is set to first. */
export function stylesOf({ style, styles, direction, connector }: WholeJack): readonly Style[] {
  const suits = stylesFor(direction, connector);
  return [style, ...styles.filter((one) => one !== style && suits.includes(one))];
}

/** A jack set to one of its styles; its circuit and part follow where the style asks for others. */
export function jackSetTo<Kind extends PlanJack>(jack: Kind, style: Style): Kind {
  return style === jack.style ? jack : settleJack({ ...jack, style });
}

/** The least length of lead from a jack to each of others, round the devices, metres; 0 where a device has no place. */
export function wayMetres(
  ways: ReturnType<typeof waysRound>,
  from: JackOnBoard,
  to: readonly JackOnBoard[],
): readonly number[] {
  if (!isPlaced(from.device)) return to.map(() => 0);
  const points = to.map(({ device, jack }) => jackPoint(device, jack));
  const lengths = ways(jackPoint(from.device, from.jack), points);
  return to.map(({ device }, at) => (isPlaced(device) ? leadMetres(lengths[at]!) : 0));
}
