/**
 * Drawings as plain data: the one door to everything that turns wiring into points, paths and text.
 */
export { along } from './along.ts';
export { drawFace } from './block.ts';
export type { Box, Point } from './geometry.ts';
export { PROBES, drawProbing, placeName, placeOf } from './probing.ts';
export type { Probe, ProbingDrawing } from './probing.ts';

export { NEAREST_LANES, TARGET, boardExtent, drawBoard, fitScale, routeBoard, scaleAhead } from './board.ts';
export type { BoardDrawing, DrawnDevice, DrawnJack, DrawnRun } from './board.ts';
export type { BoardLabel } from './board-labels.ts';
export { drawJackFace } from './socket.ts';
export type { JackFace } from './socket.ts';
