/** Works out the readings that tell the types of a jack apart, off the main thread: it takes seconds on a phone. */
import { decidingReadings } from '../../src/core/readings/index.ts';
import type { Deciding } from '../../src/core/readings/index.ts';
import type { Connector, Direction, Style } from '../../src/core/wiring/index.ts';
import { answerOrders } from '../parts/orders.ts';

/** Which jack, and the types that it may have. */
export interface ReadingsOrder {
  readonly direction: Direction;
  readonly socket: Connector;
  readonly types: readonly Style[];
  readonly canStreamClock: boolean;
}

answerOrders<ReadingsOrder, Deciding>(({ direction, socket, types, canStreamClock }) =>
  decidingReadings(direction, socket, types, canStreamClock),
);
