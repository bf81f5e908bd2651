/** The shape of a plan, its files, links and edits. The door of the floor: what others may use, and nothing else. */
export { sayChanges } from './changes.ts';
export { differences } from './differences.ts';
export { textOf } from './decode.ts';
export { fileName, planFileName, studentOfFile } from './file-name.ts';
export type { Student } from './file-name.ts';
export { addInAndOut, addJack, changeJack, freeAlong, removeJack } from './edit-jacks.ts';
export {
  addHub,
  addPress,
  addStock,
  changeHub,
  changePress,
  changeStock,
  movePress,
  pressItem,
  removeHub,
  removePress,
  removeStock,
  setMaking,
  setWishes,
} from './edit-lists.ts';
export {
  addDevice,
  changeDevice,
  duplicateDevice,
  moveDevice,
  namePlan,
  numberChannels,
  removeDevice,
  withoutIdleLeads,
  withoutInputs,
} from './edit.ts';
export { edited, freshName, nameProblem, sayEdit } from './edited.ts';
export type { Edit } from './edited.ts';
export { LIBRARY, LIBRARY_NOTE, inAndOut, planJack } from './library.ts';
export {
  boardGraph,
  inputOf,
  onlyCarries,
  outputOf,
  passesOn,
  pathsFrom,
  ringsOf,
  speaks,
} from './passing.ts';
export type { BoardGraph, Feed } from './passing.ts';
export {
  DEVICE_KINDS,
  EDGES,
  JACK_ROLES,
  PLAN_LIMITS,
  POWERS,
  PRESS_KINDS,
  PRESS_RANGES,
  SETTINGS,
  TALKS,
  THRUS,
} from './kinds.ts';
export type { DeviceKind, Edge, JackRole, LeadOrigin, Power, Setting, Talk, Thru } from './kinds.ts';
export { CHANGED_LINK, packLink, unpackLink } from './packing.ts';
export { findJack, linkOf, makePlan, plainJack, planOfLink } from './parts.ts';
export { wholeDevice, wholeJack } from './whole.ts';
export type { WholeDevice, WholeJack } from './whole.ts';
export { LEAD_DEFAULTS, MAKING_DEFAULTS, PLAN_DEFAULTS, WISH_DEFAULTS } from './plan.ts';
export type {
  Device,
  JackPlace,
  MakingPrices,
  Plan,
  PlanBranch,
  PlanJack,
  PlanLead,
  PlanLink,
  PressItem,
  StockLead,
} from './plan.ts';
export { planSchema, readPlanText, sayProblems, writePlanText } from './read-plan.ts';
export type { PlanReading } from './read-plan.ts';
export { fieldsOf, miss, sayProblem, show } from './reading.ts';
export type { Problem } from './reading.ts';
export { record } from './record.ts';
export { isPlaced, jackPoint, leadMetres, waysRound } from './route.ts';
export { left, listOf, oneNumberOf, oneOf, only, text, truth, whole } from './shape.ts';
export type { Of, Shape } from './shape.ts';
export { readSharedLink, writeSharedLink } from './shared-link.ts';
export { wholeLink } from './whole-link.ts';
