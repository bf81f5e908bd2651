import { expect, it } from 'vitest';
import { compileCircuit } from '../../../src/core/circuit/index.ts';
import { explain } from '../../../src/core/verdict/explain.ts';
import { checkLink, lineByLine, linkWords } from '../../../src/core/verdict/index.ts';
import { judgeInputs } from '../../../src/core/verdict/judge.ts';
import { prepareLink } from '../../../src/core/verdict/prepare.ts';
import { makeJack } from '../../../src/core/wiring/index.ts';
import { leadFor, oneLink } from './build.ts';

it('a circuit without a solution is an outcome with words that name the node, not an error', () => {
  const output = makeJack('out', 'din5', 'din');
  const input = makeJack('in', 'din5', 'din');
  const link = oneLink(output, input, leadFor(output, input, lineByLine(output, input)));
  const prepared = prepareLink(link, 'separate');
  // Two sources of different voltage across one rail: no voltage is both. No link of allowed values is known to come to this.
  const second = {
    kind: 'voltage',
    name: 'bench supply',
    plus: 'out rail',
    minus: 'out ground',
    volts: 9,
  } as const;
  const elements = [...prepared.model.circuit.elements, second];
  const compiled = compileCircuit({ ...prepared.model.circuit, elements });
  const { inputs, unsolved } = judgeInputs({ ...prepared, compiled }, true);
  expect(unsolved).toMatch(/^the idle state has no solution: .*(out rail|bench supply|out supply)/);
  expect(
    inputs.map(({ outcome, idle, active, worstActive }) => [outcome, idle, active, worstActive]),
  ).toEqual([['unsolved', 0, 0, 0]]);
  const found = { ...checkLink(link), outcome: 'unsolved', inputs, unsolved } as const;
  const { sentence, change } = explain(link, found, checkLink);
  expect(sentence).toBe(`Not solved: ${unsolved ?? ''}.`);
  expect(change).toBe('Change a value or the lead: this circuit could not be solved as it is.');
  expect([linkWords(found).label, linkWords(found).grade]).toEqual(['Not solved', 'bad']);
});
