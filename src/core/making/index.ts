/** The build sheet of a lead, and its test. The door of the floor: what others may use, and nothing else. */
export { BARE_END_METRES, CUP_METRES, PIN_GAP_METRES, bareEnd, sayBareEnd } from './bare-end.ts';
export { NO_CHOICES, PLUG_BODIES, STRIP_LENGTHS, cableSheet, sayStrip } from './build-sheet.ts';
export type { CableSheet, PlugBody, SheetChoices, Stock } from './build-sheet.ts';
export { COLOUR_CODES, colourWords } from './colours.ts';
export { CABLE_CORES, CABLE_METRES, FIRST_STOCK, FIRST_TAKES_METRES } from './stock.ts';
export { leadCode, readLeadCode } from './lead-code.ts';
export { madeLead, sayLeadFault } from './lead-faults.ts';
export type { LeadFault } from './lead-faults.ts';
export { BEEPS, fullTable, sayPlace, tableOf } from './lead-table.ts';
export type { Beep, Hold, ProofPlace, ProofReading } from './lead-table.ts';
export { CONDUCTOR_ANSWERS, agrees, otherContact, readingsOf, sayRow } from './row-answers.ts';
export type { ConductorAnswer, RowAnswer } from './row-answers.ts';
export { shortPlanOfLead } from './one-lead.ts';
export { fullRows, proofRows } from './proof-rows.ts';
export type { ProofRow } from './proof-rows.ts';
export { proveLead } from './prove.ts';
export type { Proof } from './prove.ts';
