/** A whole board: checks, one press, lists. The door of the floor: what others may use, and nothing else. */
export { breakoutCost } from './breakouts.ts';
export { checkBoard } from './check.ts';
export type { BoardCheck } from './check.ts';
export { DEMO_NOTE, demoBoard } from './demo.ts';
export { changeLead, connect, disconnect, refitLink } from './edit-links.ts';
export type { Finding, Severity } from './findings.ts';
export { hearers, hopNumbers, senders } from './hearing.ts';
export type { Hearing } from './hearing.ts';
export { EDGE_BUDGET_SECONDS, hopTimings } from './hops.ts';
export { bestOf, jackSetTo, makingCost, offersOf, stylesOf, waysToJoin } from './lead-offers.ts';
export type { OfferedChoice } from './lead-offers.ts';
export { pressTimeline, timePress } from './one-press.ts';
export type { PressTiming } from './one-press.ts';
export { chainFits, edgesOf, hubPrices } from './problem.ts';
export type {
  Choice,
  Edge,
  HubChoice,
  Layout,
  OutputChoice,
  OutputUse,
  PlanProblem,
  Topology,
} from './problem.ts';
export { READY_LEADS, readConductors, sayConductors, usualConductors } from './ready-leads.ts';
export {
  PRICE_NOTE,
  cableSchedule,
  csvText,
  leadLabels,
  leadWords,
  sayPrice,
  shoppingList,
} from './results.ts';
export { deviceRows, linkRows, planOfLead } from './sheet.ts';
