/** Bytes through a link and a chain. The door of the floor: what others may use, and nothing else. */
export {
  ONE_LOOK,
  STANDARD_EDGE_BUDGET,
  WORST_CLOCKS,
  WORST_CLOCKS_EARLY,
  shareOfBudget,
} from './bit-budget.ts';
export type { Clocks } from './bit-budget.ts';
export { STANDARD_EDGE_SECONDS, edgeTimes, longestLead } from './edge-times.ts';
export type { EdgeTimes } from './edge-times.ts';
export { decode } from './decode.ts';
export { encode } from './encode.ts';
export { explainBytes } from './explain.ts';
export {
  BAUD,
  BITS_PER_FRAME,
  STANDARD_CLOCK_ERROR,
  bitCells,
  bitSecondsOf,
  frameBit,
  sendBytes,
} from './frames.ts';
export type { SenderClock, SentFrames } from './frames.ts';
export { hexOf } from './hex.ts';
export { delayEdges, follow } from './hop.ts';
export { bytesOf } from './items.ts';
export type { Item } from './items.ts';
export { PLAIN_JOURNEY, journeyLink, journeySteps, sendOnJourney } from './journey.ts';
export type { Journey, Sent } from './journey.ts';
export { delaysOf, edgeShiftSeconds, outputShapeOf, followerOf } from './jack-delays.ts';
export { gaveWayAt, trialLine } from './limits.ts';
export { sayLostBits } from './lost-bits.ts';
export { limitRows, linkLimits, mostLinks } from './link-limits.ts';
export type { LimitRow } from './link-limits.ts';
export { restDeck, timeDeck } from './link-deck.ts';
export {
  BEND_CENTRE,
  CHANNEL_MODES,
  MOST_CHANNEL,
  MOST_CONTROLLER,
  MOST_FOURTEEN_BITS,
  MOST_SEVEN_BITS,
  REAL_TIME_BYTES,
  bankSelect,
} from './messages.ts';
export type { Message, RealTimeSignal } from './messages.ts';
export { outputFacts, outputTrace } from './output-trace.ts';
export { packSending, unpackSending } from './packed.ts';
export type { PackedSending } from './packed.ts';
export { throughTransistor } from './opto-output.ts';
export { BEFORE_EDGES, readLine, stepLine } from './quick-reader.ts';
export type { LineStep } from './quick-reader.ts';
export { receive, receivedBytes, sayReceived } from './receiver.ts';
export type { Heard, ReceivedByte, ReceiverOptions } from './receiver.ts';
export { sayUnsolved, sendingInWords } from './say-sending.ts';
export { runThrough } from './run-through.ts';
export { ownHop, sendThrough } from './send.ts';
export type { Sending } from './send.ts';
export { inputAmountAt, inputTrace } from './show.ts';
export { prepareTimeLink } from './time-link.ts';
export { levelAt } from './waveform.ts';
export type { Waveform } from './waveform.ts';
export { sayMicroseconds, sayOnWire } from './say-time.ts';
