/** The one door to the core: everything that others may use, and nothing else. */
export { compileCircuit, setValue } from './circuit/compile.ts';
export {
  ELEMENT_KINDS,
  FLOATING_TIE_OHMS,
  GMIN_SIEMENS,
  SWITCH_ON_OHMS,
  THERMAL_VOLTS,
  nodesOf,
} from './circuit/elements.ts';
export type { Circuit, DiodeModel, Element, ElementKind } from './circuit/elements.ts';
export { settle, solveOperatingPoint } from './circuit/operating-point.ts';
export type { Solution, Solved, Unsolved } from './circuit/operating-point.ts';

export {
  CIRCUITS,
  DRIVERS,
  PARTS,
  PROTECTION_DIODE,
  RECEIVERS,
  VALUES,
  circuitEntry,
  hasLed,
  isDriver,
  partEntry,
  valuesOf,
} from './wiring/circuits.ts';
export type {
  CircuitEntry,
  CircuitKind,
  Driver,
  Part,
  PartEntry,
  Receiver,
  ValueEntry,
  ValueName,
} from './wiring/circuits.ts';
export {
  CONNECTORS,
  CONTACTS,
  FORMS,
  contactWords,
  contactsOf,
  diameterOf,
  familyOf,
  mate,
  words,
} from './wiring/connectors.ts';
export type { Connector, Contact, Form, Mating, Touch } from './wiring/connectors.ts';
export { STATES } from './wiring/driver-circuit.ts';
export type { State } from './wiring/driver-circuit.ts';
export {
  DIRECTIONS,
  FAULT_KINDS,
  SIDES,
  circuitsFor,
  endHas,
  jackProblem,
  layConductor,
  makeJack,
  makeLead,
  removeConductor,
  settleJack,
  stylesFor,
  turnLead,
  valueAt,
  wires,
  JOINT_OHMS,
} from './wiring/link.ts';
export type { Branch, Conductor, Direction, End, Fault, Jack, Lead, Link, Side } from './wiring/link.ts';
export { GROUNDINGS, linkCircuit } from './wiring/link-circuit.ts';
export type { Grounding, LinkCircuit } from './wiring/link-circuit.ts';
export type { LinkPart, Owner, Role, Spread } from './wiring/build.ts';
export { LINES, STATUSES, STYLES, lineAt, styleEntry, styleSuits } from './wiring/styles.ts';
export type { Line, Status, Style, StyleEntry } from './wiring/styles.ts';
export {
  ADAPTER_METRES,
  CONTACT_OHMS,
  GAUGES,
  LENGTH_METRES,
  STANDARD_METRES,
  wireDiameterMetres,
  wireOhmsPerMetre,
} from './wiring/wire.ts';

export { checkLink } from './verdict/check.ts';
export type { LinkVerdict } from './verdict/check.ts';
export { worstCase } from './verdict/corners.ts';
export type { Step } from './verdict/steps.ts';
export {
  conductorMaps,
  findLead,
  leadFor,
  shopWords,
  solveMapOnce,
  solveMaps,
  verdictOn,
  wiredContacts,
} from './verdict/find-lead.ts';
export type { LeadAnswer, LeadCandidate } from './verdict/find-lead.ts';
export type { InputVerdict } from './verdict/judge.ts';
export { lineByLine } from './verdict/needed.ts';
export { partWords } from './verdict/part-words.ts';
export { NOTES, OUTCOMES, noteLabel, outcomeWords, worse } from './verdict/outcomes.ts';
export type { Grade, Note, NoteKind, Outcome } from './verdict/outcomes.ts';
export { prepareLink, settleState, solveState } from './verdict/prepare.ts';
export type { PreparedLink } from './verdict/prepare.ts';
export type {
  ConductorReading,
  ContactReading,
  PartReading,
  Spot,
  StateReading,
} from './verdict/readings.ts';
export { sayAmperes, sayList, sayOhms, sayVolts, sayWatts } from './verdict/speak.ts';

export { differences } from './files/differences.ts';
export {
  PLAN_DEFAULTS,
  PLAN_FORMAT,
  PLAN_LIMITS,
  PLAN_VERSION,
  findJack,
  linkOf,
  makePlan,
  planOfLink,
} from './files/plan.ts';
export type { Device, JackPlace, Plan, PlanBranch, PlanJack, PlanLead, PlanLink } from './files/plan.ts';
export { sayProblem } from './files/read.ts';
export type { Problem } from './files/read.ts';
export { readPlan, readPlanText, sayProblems, writePlanText } from './files/read-plan.ts';
export type { PlanReading } from './files/read-plan.ts';
export { planSchema } from './files/schema.ts';
export { leadCode, readLeadCode } from './files/lead-code.ts';
export type { CodeReading } from './files/lead-code.ts';
export { shortPlanOfLead } from './files/one-lead.ts';
export { readSharedLink, writeSharedLink } from './files/shared-link.ts';

export { bitCells, BITS_PER_FRAME, STANDARD_CLOCK_ERROR } from './signal/frames.ts';
export type { BitCell, SentByte } from './signal/frames.ts';
export { bankSelect, CHANNEL_MODES, REAL_TIME_BYTES } from './signal/messages.ts';
export type { Message } from './signal/messages.ts';
export { encode } from './signal/encode.ts';
export { decode } from './signal/decode.ts';
export { explainBytes } from './signal/explain.ts';
export { hexOf } from './signal/hex.ts';
export type { ByteExplanation } from './signal/explain.ts';
export { differenceInWords } from './signal/difference.ts';
export type { ByteOutcome } from './signal/difference.ts';
export { HOP_KINDS } from './signal/hop.ts';
export type { Hop, HopKind } from './signal/hop.ts';
export { optoOf } from './signal/optocouplers.ts';
export type { Heard } from './signal/receiver.ts';
export { ownHop, sendThrough } from './signal/send.ts';
export type { Leg, LegRun, Sending } from './signal/send.ts';
export { inputAmountAt, inputTrace } from './signal/show.ts';
export { prepareTimeLink } from './signal/time-link.ts';
export type { TimeLink } from './signal/time-link.ts';
export { levelAt } from './signal/waveform.ts';

export { edgeTimes, longestLead, STANDARD_EDGE_SECONDS } from './signal/edge-times.ts';
export type { EdgeTimes, LongestLead } from './signal/edge-times.ts';
export { mostHops } from './signal/limits.ts';
export type { GaveWay, Limit, Trial } from './signal/limits.ts';
export { bitSecondsOf } from './signal/frames.ts';
export { stageOf } from './signal/line.ts';
export { VOTE_SAMPLES } from './signal/receiver.ts';

export { widestClockError } from './signal/limits.ts';
export { restDeck, timeDeck } from './signal/link-deck.ts';
export { drawBuilds } from './verdict/tolerance.ts';
export type { DrawProgress, ToleranceResult } from './verdict/tolerance.ts';

export { COLOUR_CODES, USUAL_COLOURS, colourWords } from './meter/colours.ts';
export type { ColourCode } from './meter/colours.ts';
export { MARKINGS, MENU_FACTS } from './meter/evidence.ts';
export type { Evidence, Marking, MenuFact } from './meter/evidence.ts';
export { answerFinder } from './meter/finder-answer.ts';
export type { AnswerRow, AnswerState, FinderAnswer, Likelihood } from './meter/finder-answer.ts';
export type { TakenReading } from './meter/finder.ts';
export { METER_PROFILES, meterProfile } from './meter/instruments.ts';
export type { MeterFunction, MeterProfileName } from './meter/instruments.ts';
export { sayPower } from './meter/power.ts';
export type { Power as MeterPower } from './meter/power.ts';
export { sayFunction, sayReading, shownBy } from './meter/reading.ts';
export type { Reading as MeterReading } from './meter/reading.ts';
export { SAFE_RULE, safeReadings } from './meter/safe-readings.ts';
export { probedContacts, readJack } from './meter/subjects.ts';
export type { JackReading } from './meter/subjects.ts';
export { sayJackReading } from './meter/words.ts';
export { NO_CHOICES, PLUG_BODIES, cableSheet, sayStrip } from './meter/cable-sheet.ts';
export type { CableSheet, PlugBody, SheetChoices, SheetRow, Stock } from './meter/cable-sheet.ts';
export { BEEPS, HOLDS, fullTable, leadPairs, sayPlace } from './meter/lead-table.ts';
export type { Beep, Hold, ProofPlace, ProofReading } from './meter/lead-table.ts';
export { sayLeadFault } from './meter/lead-faults.ts';
export type { ProofRow } from './meter/proof-rows.ts';
export { proveLead } from './meter/prove.ts';
export type { Proof } from './meter/prove.ts';
export { readEntry, unitsOf } from './meter/entry.ts';
export type { Unit } from './meter/entry.ts';
export type { ScaledFunction } from './meter/scale.ts';
export { fullRows, proofRows } from './meter/proof-rows.ts';

export { BENCH_BOARDS, BOARD_FAULTS, faultName, sayBoardFault, sayFaultKind } from './meter/board-faults.ts';
export type { BenchBoard, BoardFault, BoardFaultKind } from './meter/board-faults.ts';
export { remedyFor } from './meter/board-remedies.ts';
export type { Symptom } from './meter/board-symptoms.ts';
export {
  benchTable,
  FREQUENCIES_ARE_INVENTED,
  gradeFault,
  guide,
  hideNumberedFault,
  MOST_FAULT_NUMBER,
  observe,
  suspectsLeft,
  USUAL_FREQUENCIES,
} from './meter/fault-bench.ts';
export type { FaultGrade, Frequencies, GuideStep, HiddenFault, Seen } from './meter/fault-bench.ts';
export { METER_FUNCTIONS } from './meter/instruments.ts';
export { POWERS } from './meter/power.ts';
export {
  displayText,
  explainReading,
  plugWords,
  probePlaces,
  probedEnds,
  readUnder,
  samePlace,
  sayProbePlace,
} from './meter/probing.ts';
export type { Probing, UnderTest } from './meter/probing.ts';
export type { JackUnderTest, LeadContact } from './meter/subjects.ts';
export { sayUnderTest } from './meter/words.ts';
export { OTHER_JACKS, otherJackEntry, otherJackSuits } from './wiring/other-jacks.ts';
export type { OtherJackKind } from './wiring/other-jacks.ts';

export { checkBoard } from './board/check.ts';
export type { BoardCheck } from './board/check.ts';
export { FINDING_KINDS, SEVERITIES } from './board/findings.ts';
export type { Finding, FindingKind, Severity, Where } from './board/findings.ts';
export { BYTE_SECONDS, EDGE_BUDGET_SECONDS, PART_DELAYS, hopTimings } from './board/hops.ts';
export type { HopTiming } from './board/hops.ts';
export { judgeLink } from './board/judge-link.ts';
export type { LinkMemory } from './board/judge-link.ts';
export { jackSetTo, stylesOf } from './board/lead-offers.ts';
export { LIBRARY, LIBRARY_NOTE, inAndOut, planJack } from './board/library.ts';
export { messagesOf, pressTimeline, timePress } from './board/one-press.ts';
export type { PressTiming, TimelineRow } from './board/one-press.ts';
export { boardGraph, onlyCarries, passesOn, pathsFrom, speaks } from './board/passing.ts';
export type { BoardGraph, Feed } from './board/passing.ts';
export { boardFacts, planBoard } from './board/plan-it.ts';
export type { BoardFacts, PlanAnswer, PlanProgress, PlannedBoard } from './board/plan-it.ts';
export {
  DEVICE_KINDS,
  EDGES,
  JACK_ROLES,
  LEAD_ORIGINS,
  MAKING_DEFAULTS,
  POWERS as DEVICE_POWERS,
  SETTINGS,
  TALKS,
  THRUS,
  WISH_DEFAULTS,
  wholeDevice,
  wholeJack,
} from './board/plan.ts';
export type {
  DeviceKind,
  Edge,
  JackRole,
  LeadOrigin,
  MakingPrices,
  Power as DevicePower,
  Setting,
  StockLead,
  Talk,
  Thru,
  WholeDevice,
  WholeJack,
  Wishes,
} from './board/plan.ts';
export { PRESS_KINDS, PRESS_RANGES } from './board/press.ts';
export type { PressItem } from './board/press.ts';
export { PRICE_NOTE, cableSchedule, csvText, leadLabels, leadWords, shoppingList } from './board/results.ts';
export type { LeadLabel, ScheduleRow, ShoppingList, ShoppingRow } from './board/results.ts';
export { isPlaced, jackPoint, leadMetres, waysRound } from './board/route.ts';
export type { Point, Ways } from './board/route.ts';

export {
  addHub,
  addStock,
  changeHub,
  changeStock,
  removeHub,
  removeStock,
  setMaking,
  setWishes,
} from './board/edit-offers.ts';
export { addPress, changePress, movePress, pressItem, removePress } from './board/edit-press.ts';
export { MOST_EXACT } from './board/search.ts';
export { READY_LEADS, readConductors, sayConductors, usualConductors } from './board/ready-leads.ts';
export { sayPrice } from './board/results.ts';
export { deviceRows, linkRows, planOfLead } from './board/sheet.ts';
export type { DeviceRow, LinkRow } from './board/sheet.ts';

export {
  addDevice,
  changeDevice,
  duplicateDevice,
  freshName,
  moveDevice,
  nameBoard,
  numberChannels,
  removeDevice,
  sayEdit,
} from './board/edit.ts';
export type { Edit, EditProblem } from './board/edit.ts';
export {
  addInAndOut,
  addJack,
  changeJack,
  freeAlong,
  removeJack,
  settlePlanJack,
} from './board/edit-jacks.ts';
export { changeLead, connect, disconnect, refitLink, replaceLeads } from './board/edit-links.ts';
export type { Connected } from './board/edit-links.ts';
export { sayChanges } from './board/changes.ts';
export { hearers, hopNumbers, senders } from './board/hearing.ts';
export type { Hearers, Hearing } from './board/hearing.ts';
export { DEMO_NOTE, demoBoard } from './board/demo.ts';

export { BARE_END_METRES, CUP_METRES, PIN_GAP_METRES, bareEnd, sayBareEnd } from './meter/bare-end.ts';
export type { BareEnd } from './meter/bare-end.ts';
export { STRIP_LENGTHS } from './meter/cable-sheet.ts';
export { LEAD_FAULTS, madeLead } from './meter/lead-faults.ts';
export type { LeadFault } from './meter/lead-faults.ts';
export { tableOf } from './meter/lead-table.ts';
export { bitsOfObservation, fewestExpected } from './meter/decision.ts';
export type { Suspects } from './meter/decision.ts';
export type { BenchTable } from './meter/fault-bench.ts';
