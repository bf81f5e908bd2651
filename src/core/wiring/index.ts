/** Jacks, leads and links, and the circuits they make. The door of the floor: what others may use, and nothing else. */
export {
  OUTPUT_GROUND,
  collector,
  inputGround,
  inputNode,
  leadNode,
  outputNode,
  spreadName,
} from './build.ts';
export type { LinkPart, Role, Spread } from './build.ts';
export { CIRCUITS, circuitEntry, hasLed, valuesOf } from './circuits.ts';
export type { CircuitKind } from './circuits.ts';
export {
  CONNECTORS,
  CONTACTS,
  FORMS,
  conductorWords,
  contactWords,
  contactsOf,
  diameterOf,
  familyOf,
  mate,
  wiringWords,
  words,
} from './connectors.ts';
export type { Connector, Contact, Form } from './connectors.ts';
export { dinAngle, dinReadingOrder, pinsOf } from './din-face.ts';
export type { DinView, FaceInput, View } from './din-face.ts';
export { STATES, addDriver } from './driver-circuit.ts';
export type { State, Switching } from './driver-circuit.ts';
export { addLeads } from './lead-circuit.ts';
export type { Misfit } from './lead-circuit.ts';
export { DRAWER, GOODS, goodsLike } from './goods.ts';
export type { Goods } from './goods.ts';
export { GROUNDINGS, linkCircuit } from './link-circuit.ts';
export type { Grounding, LinkCircuit } from './link-circuit.ts';
export {
  DIRECTIONS,
  JOINT_OHMS,
  SIDES,
  circuitsFor,
  jackProblem,
  layConductor,
  makeJack,
  makeLead,
  newJack,
  settleJack,
  stylesFor,
  turnLead,
  valueAt,
  wires,
} from './link.ts';
export type { Branch, Conductor, Direction, End, Fault, Jack, Lead, Link, Rival, Side } from './link.ts';
export { PROTECTION_DIODE } from './diodes.ts';
export {
  EXTRAS,
  exchangedContacts,
  extraEntry,
  diodeOf,
  extraSuits,
  linesInside,
  sayExtra,
  sayOnContacts,
  withExtra,
} from './extras.ts';
export { foreignOn } from './foreign-supply.ts';
export type { Extra } from './extras.ts';
export { CURRENT_TO_SPEAK_OF, partEntry } from './optocouplers.ts';
export { PARTS, USUAL_PARTS } from './parts.ts';
export type { Part } from './parts.ts';
export { OTHER_JACKS, addOtherJack, otherJackEntry, otherJackSuits } from './other-jacks.ts';
export type { OtherJackKind, OtherJackValues } from './other-jacks.ts';
export { outputModel } from './opto-outputs.ts';
export { hasOwnOutputSide, outputStage } from './output-stage.ts';
export type { OutputJack } from './output-stage.ts';
export { collectorAmperes, saturationAmperes } from './transistor-stage.ts';
export type { TransistorStage } from './transistor-stage.ts';
export { addReceiver } from './receiver-circuit.ts';
export type { Sense } from './receiver-circuit.ts';
export { LINES, STYLES, lineAt, styleEntry } from './styles.ts';
export type { Line, Status, Style } from './styles.ts';
export { DEFAULT_TIMING, LATENCY_SECONDS } from './timing.ts';
export type { Timing } from './timing.ts';
export { DIN_TO_TYPE_A, STRAIGHT_DIN, STRAIGHT_TRS } from './usual-wires.ts';
export { BESIDE_VALUES, VALUES } from './values.ts';
export type { ValueEntry, ValueName } from './values.ts';
export {
  ADAPTER_METRES,
  CONTACT_OHMS,
  CONTACT_FLOOR,
  CONTACT_RANGE,
  GAUGES,
  LENGTH_METRES,
  PIGTAIL_METRES,
  STANDARD_METRES,
  wireOhmsPerMetre,
} from './wire.ts';
export { contactsJoined, seriesBetween } from './series.ts';
