/**
 * Drawings as plain data: the one door to everything that turns wiring into points, paths and text.
 */
export { along } from './along.ts';
export { bitTrace } from './bits.ts';
export type { BitTraceInput } from './bits.ts';
export { drawFace } from './block.ts';
export { dinAngle, dinPin, dinReadingOrder, drawDin } from './din.ts';
export type { DinView } from './din.ts';
export { OUTLINE_KINDS, VIEWS } from './face.ts';
export type { FaceContact, FaceDrawing, FaceInput, Outline, View } from './face.ts';
export type { Box, Exit, Point } from './geometry.ts';
export type { JointTouch } from './joint.ts';
export { drawLead } from './lead.ts';
export type {
  ChainInput,
  ConductorInput,
  DrawnConductor,
  DrawnEnd,
  LeadDrawing,
  LeadEnd,
  LeadInput,
  LeadJoint,
  LeadSegment,
} from './lead-shape.ts';
export { drawPhone } from './phone.ts';
export { SCHEMATIC_DRIVERS, drawSchematic } from './schematic.ts';
export type { SchematicDrawing, SchematicDriver, SchematicInput } from './schematic.ts';
export { LINE_KINDS, milliampereWords, weightOf } from './stroke.ts';
export type { LineKind } from './stroke.ts';
export type { TextLine } from './text.ts';
export { PROBES, drawProbing, placeName, placeOf } from './probing.ts';
export type {
  DrawnProbe,
  DrawnProbedEnd,
  Probe,
  ProbedEnd,
  ProbingDrawing,
  ProbingInput,
} from './probing.ts';

export { TARGET, boardExtent, drawBoard, fitScale, routeBoard } from './board.ts';
export type { BoardDrawing, BoardRoutes, DrawnDevice, DrawnJack, DrawnRun } from './board.ts';
export type { BoardLabel } from './board-labels.ts';
export { drawJackFace } from './socket.ts';
export type { JackFace } from './socket.ts';
