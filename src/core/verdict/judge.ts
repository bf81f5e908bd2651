/** From solved currents to an outcome: one rule, in one order, for every input. */
import { CURRENT_TO_SPEAK_OF, STATES } from '../wiring/index.ts';
import type { Sense, State } from '../wiring/index.ts';
import { worstCase } from './corners.ts';
import type { Corner, WorstCase } from './corners.ts';
import type { Outcome } from './outcomes.ts';
import { readInput, settleState } from './prepare.ts';
import type { InputReading, PreparedLink } from './prepare.ts';

/** An input judged: amperes of its LED, or volts at a level input, in both states and at the worst corner of each. */
export interface InputVerdict {
  readonly outcome: Outcome;
  readonly kind: 'current' | 'level';
  readonly idle: number;
  readonly active: number;
  /** Amperes through the protection diode in each state; 0 where there is none. */
  readonly reverseAmperes: { readonly idle: number; readonly active: number };
  /** The value nearest to failing over all corners: most in idle and least in active for a current, the reverse for a level. */
  readonly worstIdle: number;
  readonly worstActive: number;
  readonly worstCorner: Corner;
  /** On from here and off below there: amperes, or for a level input on below `on` and off above `off`, volts. */
  readonly on: number;
  readonly off: number;
}

/** Where an input is on and where it is off: amperes, or volts of a level input. */
export function boundsOf(sense: Sense): Pick<InputVerdict, 'on' | 'off'> {
  return sense.kind === 'current'
    ? { on: sense.onAmperes, off: sense.offAmperes }
    : { on: sense.lowVolts, off: sense.highVolts };
}

/** Whether a value switches the input on, off, or neither. */
export function levelOf(sense: Sense, value: number): 'on' | 'off' | 'between' {
  const { on, off } = boundsOf(sense);
  if (sense.kind === 'level') return value <= on ? 'on' : value >= off ? 'off' : 'between';
  return value >= on ? 'on' : value < off ? 'off' : 'between';
}

/** Whether a value switches every part of the input's type on. */
function surelyOn(sense: Sense, value: number): boolean {
  return sense.kind === 'current' ? value >= sense.sureAmperes : levelOf(sense, value) === 'on';
}

/**
 * The outcome of one input at nominal: `right` stands for flows or weak, which the corners decide.
 * Order: always-on, inverted, right, then starved, backwards, no-path; a level between its bounds is unclear.
 */
function judgeNominal(sense: Sense, idle: InputReading, active: InputReading): Outcome | 'right' {
  const inIdle = levelOf(sense, idle.value);
  const inActive = levelOf(sense, active.value);
  if (sense.kind === 'level' && (inIdle === 'between' || inActive === 'between')) return 'unclear';
  if (inIdle === 'on') return inActive === 'on' ? 'always-on' : 'inverted';
  if (inActive === 'on') return 'right';
  if (sense.kind === 'level') return 'no-path';
  if (active.value > CURRENT_TO_SPEAK_OF) return 'starved';
  return active.reverseAmperes > CURRENT_TO_SPEAK_OF ? 'backwards' : 'no-path';
}

/** All inputs judged; `unsolved` says what has no solution, and then every input is 'unsolved'. */
export interface InputsJudged {
  readonly inputs: readonly InputVerdict[];
  readonly unsolved: string | undefined;
}

/** Judge every input of a prepared link. `corners` false leaves the tolerances out: right counts as flows. */
export function judgeInputs(prepared: PreparedLink, corners: boolean): InputsJudged {
  const { senses } = prepared;
  const none: InputReading = { value: 0, reverseAmperes: 0 };
  let unsolved: string | undefined;
  const [idles, actives] = STATES.map((state) => {
    const failed = settleState(prepared, state);
    if (failed) unsolved ??= `the ${state} state has no solution: ${failed.reason}`;
    return senses.map((_, input) => (failed ? none : readInput(prepared, input)));
  }) as [InputReading[], InputReading[]];
  const inputs = senses.map((sense, input): InputVerdict => {
    const idle = idles[input] as InputReading;
    const active = actives[input] as InputReading;
    const nominal = unsolved === undefined ? judgeNominal(sense, idle, active) : 'unsolved';
    const current = sense.kind === 'current';
    const worst = (state: State, sign: 1 | -1, { value }: InputReading): WorstCase =>
      corners && unsolved === undefined ? worstCase(prepared, state, input, sign) : { value, corner: {} };
    const atActive = worst('active', current ? 1 : -1, active);
    const atIdle = worst('idle', current ? -1 : 1, idle);
    const holds = surelyOn(sense, atActive.value) && levelOf(sense, atIdle.value) === 'off';
    return {
      outcome: nominal === 'right' ? (holds ? 'flows' : 'weak') : nominal,
      kind: sense.kind,
      idle: idle.value,
      active: active.value,
      reverseAmperes: { idle: idle.reverseAmperes, active: active.reverseAmperes },
      worstIdle: atIdle.value,
      worstActive: atActive.value,
      worstCorner: atActive.corner,
      ...boundsOf(sense),
    };
  });
  return { inputs, unsolved };
}
