/**
 * Walks that remember: the cheapest walk from each device that never comes back to a device it still remembers. Each device
 * lets the walk remember only its nearest neighbours (Baldacci, Mingozzi and Roberti, 2011: ng-routes), so a walk may repeat a
 * far device; that keeps the table small, and the cheapest walk below the cheapest chain.
 */
import type { Row } from './price-links.ts';

/** The table of walks, made once for a board and filled again for each set of rewards. */
interface WalkTable {
  readonly fill: (next: readonly Row[], rewards: Float64Array) => void;
  /** The cheapest walk of at most `longest` devices behind a place that feeds each device at `start`. */
  readonly best: (
    start: Row,
    longest: number,
  ) => { readonly value: number; readonly devices: readonly number[] };
}

/** Devices that each one lets a walk remember, itself the first: more close a gap of a percent little further, at twice the time each. */
const MEMORY = 4;
const STATES = 1 << MEMORY;

/** Make a table for walks of at most `longest` devices; `near` are costs from device to device. */
export function walkTable(count: number, near: readonly Row[], longest: number): WalkTable {
  const grown = grownStates(count, near);
  const steps = new Float64Array(count * count);
  const layers = Array.from({ length: Math.max(1, longest) }, () => ({
    cost: new Float64Array(count * STATES),
    then: new Int32Array(count * STATES),
  }));
  return {
    fill: (next, rewards) => {
      for (let to = 0; to < count; to++)
        for (let from = 0; from < count; from++) steps[from * count + to] = next[to]![from]! - rewards[to]!;
      layers[0]!.cost.fill(Infinity);
      for (let at = 0; at < count; at++) layers[0]!.cost[at * STATES + 1] = -rewards[at]!;
      for (let more = 1; more < layers.length; more++) {
        const before = layers[more - 1]!.cost;
        const { cost, then } = layers[more]!;
        cost.fill(Infinity);
        for (let state = 1; state < count * STATES; state += 2) {
          const rest = before[state]!;
          if (rest === Infinity) continue;
          const row = Math.floor(state / STATES) * count;
          for (let to = 0; to < count; to++) {
            const target = grown[state * count + to]!;
            const sum = rest + steps[row + to]!;
            if (target < 0 || sum >= cost[target]!) continue;
            cost[target] = sum;
            then[target] = state;
          }
        }
      }
    },
    best: (start, most) => {
      let [value, layer, state] = [Infinity, -1, -1];
      layers.slice(0, most).forEach(({ cost }, more) => {
        for (let at = 1; at < cost.length; at += 2) {
          const sum = start[Math.floor(at / STATES)]! + cost[at]!;
          if (sum < value) [value, layer, state] = [sum, more, at];
        }
      });
      const devices: number[] = [];
      for (; layer >= 0; layer--) {
        devices.push(Math.floor(state / STATES));
        state = layers[layer]!.then[state]!;
      }
      return { value, devices };
    },
  };
}

/** `grown[state * count + to]`: the state of a walk that gets one more device in front of it, -1 where it still remembers that one. */
function grownStates(count: number, near: readonly Row[]): Int32Array {
  const all = Array.from({ length: count }, (_, at) => at);
  const hoods = all.map((at) => {
    const distance = (other: number): number =>
      other === at ? -Infinity : Math.min(near[at]![other]!, near[other]![at]!);
    return all.toSorted((a, b) => distance(a) - distance(b) || a - b).slice(0, MEMORY);
  });
  const grown = new Int32Array(count * STATES * count);
  for (const from of all)
    for (let bits = 0; bits < STATES; bits++) {
      const remembered = hoods[from]!.filter((_, bit) => (bits >> bit) % 2 === 1);
      for (const to of all) {
        const kept = [to, ...remembered]
          .map((device) => hoods[to]!.indexOf(device))
          .filter((bit) => bit >= 0);
        const state = to * STATES + kept.reduce((sum, bit) => sum | (1 << bit), 0);
        grown[(from * STATES + bits) * count + to] = remembered.includes(to) ? -1 : state;
      }
    }
  return grown;
}
