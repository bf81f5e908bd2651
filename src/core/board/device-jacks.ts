/** Jacks of a plan from what is told of them; half a jack is a question. */
import { PLAN_LIMITS, inAndOut, planJack } from '../plan/index.ts';
import type { PlanJack } from '../plan/index.ts';
import { CONNECTORS, styleEntry, stylesFor, words } from '../wiring/index.ts';
import type { Connector, Style } from '../wiring/index.ts';
import { stop } from './device-told.ts';
import type { Told } from './device-told.ts';

/** Size of a phone jack that is not told, by type: small for the loop, large for signals to ground (common practice, no source). */
const usualSize = (style: Style): '6.35' | '3.5' =>
  style === 'type-a' || style === 'type-b' ? '3.5' : '6.35';

/** The jacks of one breath, not yet named apart. */
function jacksOfOne({ plug, size, styles = [], ways }: Told): readonly PlanJack[] {
  return ways.flatMap(({ direction, role, count }) => {
    if (count > PLAN_LIMITS.jacks)
      return stop(String(count), `at most ${PLAN_LIMITS.jacks} jacks on a device`);
    return Array.from({ length: count }).flatMap((): readonly PlanJack[] => {
      const name = direction === 'in' ? 'IN' : role === 'thru' ? 'THRU' : 'OUT';
      if (plug === 'din5' || plug === 'din7') {
        if (direction === 'both') return stop('in-and-out', 'TRS beside an in-and-out jack');
        if (styles[0] !== undefined) return stop(styleEntry(styles[0]).label, 'a type beside TRS only');
        return [planJack(name, direction, plug, 'din', role === 'plain' ? {} : { role })];
      }
      if (plug === undefined && size === undefined && styles.length === 0)
        return stop(name.toLowerCase(), `the jack it is: 'DIN ${name.toLowerCase()}', or TRS with its type`);
      const [style] = styles;
      if (direction === 'both') {
        const receivesOn = style === 'ring-signal' ? 'ring' : 'tip';
        return inAndOut('CONTROL', receivesOn, phone(plug, size ?? '6.35'));
      }
      if (style === undefined)
        return stop(plug?.toUpperCase() ?? size ?? '', `its type: ${TYPES}. ${NOT_TOLD}`);
      const connector = phone(plug, size ?? usualSize(style));
      if (!stylesFor(direction, connector).includes(style))
        return stop(styleEntry(style).label, `a type that a ${words(connector)} ${direction} can have`);
      const more = { ...(role === 'plain' ? {} : { role }), ...(styles.length > 1 ? { styles } : {}) };
      return [planJack(name, direction, connector, style, more)];
    });
  });
}

const TYPES = "'TRS-A', 'TRS-B', 'TRS-A/B' where it can be set, 'TRS tip' or 'TRS ring'";
const NOT_TOLD = 'If the manual does not say, name the jack with a meter first';

function phone(plug: 'trs' | 'ts' | undefined, size: '6.35' | '3.5' | '2.5'): Connector {
  const wanted = `${plug ?? 'trs'}-${size}`;
  return CONNECTORS.find((one) => one === wanted) ?? stop(size, `6.35 or 3.5 mm for a TS jack`);
}

/** The jacks that are told, each with a name of its own. @throws Stopped at what no jack can be. */
export function jacksOf(told: readonly Told[]): readonly PlanJack[] {
  return named(told.flatMap(jacksOfOne));
}

/** Jacks of one name are numbered: OUT 1, OUT 2. The two of one hole keep theirs, which name one another. */
function named(jacks: readonly PlanJack[]): readonly PlanJack[] {
  if (jacks.filter(({ sharesHole = '' }) => sharesHole !== '').length > 2)
    return stop('in-and-out', 'one in-and-out jack in a line; add more on the board');
  return jacks.map((jack, at) => {
    const same = jacks.filter(({ name }) => name === jack.name);
    const before = jacks.slice(0, at).filter(({ name }) => name === jack.name).length;
    return same.length > 1 ? { ...jack, name: `${jack.name} ${before + 1}` } : jack;
  });
}
