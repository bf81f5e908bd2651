/** Plain splits and outputs that meet, solved for tasks. Each is solved once. */
import { compileCircuit, setValue, solveOperatingPoint } from '../../../circuit/index.ts';
import { checkLink } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, linkCircuit, makeJack, makeLead } from '../../../wiring/index.ts';
import type { Jack, Link, Part, State } from '../../../wiring/index.ts';
import { remembered } from '../chance.ts';
import { LED_VOLTS, jacksOf, type Loop } from '../five-milliamp-loop/loops.ts';

/** The plain lead of a metre that every input of these tasks hangs on. */
const LEAD = makeLead('din5', 'din5', STRAIGHT_DIN, { lengthMetres: 1 });

/** What one input of a split gets and needs while a 0 is sent, milliamperes. */
interface Share {
  readonly gets: number;
  readonly needs: number;
}

/** An output with inputs beside one another on it, the leads as long as told (1 m where not told). */
export const sharesOf = remembered((output: Jack, inputs: readonly Jack[], metres: number = 1) => {
  const leads = [{ ...LEAD, lengthMetres: metres }];
  const link: Link = { output, branches: inputs.map((input) => ({ input, leads })) };
  return checkLink(link, 'outcome').inputs.map(({ active, on }): Share => ({
    gets: active * 1e3,
    needs: on * 1e3,
  }));
});

/** What each of some inputs alike gets on the output of a loop, milliamperes. */
export function shareOf(loop: Loop, inputs: number): number {
  const [output, input] = jacksOf(loop);
  return sharesOf(
    output,
    Array.from({ length: inputs }, () => input),
  )[0]!.gets;
}

/** The same by hand: the output's resistors carry what all inputs take, so each of them counts once for every input. */
export const byHand = ({ volts, source, sink, series }: Loop, inputs: number): number =>
  ((volts - LED_VOLTS) / (inputs * (source + sink) + series)) * 1e3;

/** An input with a part, in a DIN jack. */
export const inputWith = (part: Part): Jack => makeJack('in', 'din5', 'din', { part });

/** Two outputs joined by wire at one input; the second rests. */
interface Meeting {
  readonly first: Jack;
  readonly second: Jack;
  readonly state: State;
}

/** What flows out of one output and into the other on each line, milliamperes. */
export const fightOf = remembered(({ first, second, state }: Meeting) => {
  const input = inputWith('6N138');
  const model = linkCircuit(
    {
      output: first,
      branches: [{ input, leads: [LEAD] }],
      rivals: [{ output: second, branches: [{ input, leads: [LEAD], shares: 0 }] }],
    },
    'joined',
  );
  const compiled = compileCircuit(model.circuit);
  for (const [name, position] of [...model.switching[state], ...model.rivals.flatMap(({ idle }) => idle)])
    setValue(compiled, name, position);
  const solved = solveOperatingPoint(compiled);
  if (!solved.ok) throw new Error(`task: two outputs have no solution, ${solved.reason}`);
  const between = (resistor: string): number => {
    const [one, other] = [`out ${resistor}`, `out2 ${resistor}`].map(
      (name) => solved.amperes(name) * 1e3,
    ) as [number, number];
    return one * other < 0 ? Math.min(Math.abs(one), Math.abs(other)) : 0;
  };
  return { source: between('source resistor'), sink: between('sink resistor') };
});
