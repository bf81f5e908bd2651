/** What lies on the bench, and every change of it: held to the rules of a plan and to the verdict. */
import { describe, expect, test } from 'vitest';
import {
  conductorsAt,
  drawWork,
  lineOfRef,
  readingOfRef,
  refOfSpot,
  shortAnswer,
  voltWords,
} from '../../../components/bench/figure.ts';
import { fromAddress, fromPlan } from '../../../components/bench/keep.ts';
import {
  addFault,
  addSecond,
  changeEnd,
  changeJack,
  clearLeads,
  dropFault,
  dropSecond,
  firstWork,
  isEmpty,
  jackOn,
  layLead,
  leadsOn,
  linkAhead,
  linkOn,
  startingWork,
  sayToggle,
  toggleConductor,
  verdictOf,
  workOf,
  workOfPlan,
} from '../../../components/bench/work.ts';
import type { Work } from '../../../components/bench/work.ts';
import { demoBoard } from '../../../src/core/board/index.ts';
import { edited, makePlan } from '../../../src/core/plan/index.ts';
import { checkLink, lineByLine, sayAmperes } from '../../../src/core/verdict/index.ts';
import {
  CONNECTORS,
  contactWords,
  makeJack,
  makeLead,
  stylesFor,
  wires,
} from '../../../src/core/wiring/index.ts';
import { planHash } from '../../../components/keep/plan-files.ts';

const RIGHT = wires('4-ring', '5-tip', '2-sleeve');
const wired: Work = layLead(firstWork(), RIGHT);

/** The plan of a work must be one that a file can hold. */
const isWhole = (work: Work): boolean => edited(work.plan).ok;

describe('A work', () => {
  test('begins with two jacks and a lead without wires', () => {
    const work = firstWork();
    expect([isEmpty(work), isWhole(work)]).toEqual([true, true]);
  });

  test('is the first link of a plan, and there is none without a link', () => {
    const plan = demoBoard();
    expect(startingWork(plan)).toEqual({ plan, link: 0, branch: 0 });
    expect(workOfPlan(makePlan({}))).toBe('links: expected at least one link to wire, got none');
    expect(() => startingWork(makePlan({}))).toThrow('bench: links: expected at least one link');
  });

  test('has the verdict of its link, and its short answer says it', () => {
    const verdict = verdictOf(wired);
    expect(verdict.outcome).toBe(checkLink(linkOn(wired)).outcome);
    expect(shortAnswer(verdict)).toBe(`Works: ${sayAmperes(verdict.inputs[0]?.active ?? 0)}`);
  });

  test('is judged once: a work that undo brings back finds its verdict again', () => {
    const cut = toggleConductor(wired, 0, { from: '4', to: 'ring' });
    const [first, other, again] = [verdictOf(wired), verdictOf(cut), verdictOf(wired)];
    expect(again).toBe(first);
    expect([first.outcome, other.outcome]).toEqual(['flows', 'no-path']);
  });

  test('puts the input on the bench first where it follows one input', () => {
    const input = makeJack('in', 'trs-3.5', 'type-b');
    const { plan } = workOf(makeJack('out', 'din5', 'din'), input, [makeLead('din5', 'trs-3.5', [])]);
    const two: Work = {
      plan: {
        ...plan,
        devices: [
          ...plan.devices,
          { name: 'other', jacks: [{ ...makeJack('in', 'din5', 'din'), name: 'in' }] },
        ],
        links: plan.links.map((link) => ({
          ...link,
          inputs: [...link.inputs, { device: 'other', jack: 'in', leads: [] }],
        })),
      },
      link: 0,
      branch: 1,
    };
    expect(linkAhead(two).branches.map((branch) => branch.input.style)).toEqual(['din', 'type-b']);
    expect(linkOn(two).branches.map((branch) => branch.input.style)).toEqual(['type-b', 'din']);
  });
});

describe('Wiring', () => {
  test('lays a conductor, and takes it out where it is laid', () => {
    const [wire] = RIGHT;
    if (!wire) throw new Error('needs a wire');
    const once = toggleConductor(firstWork(), 0, wire);
    const [from, to] = [contactWords(wire.from), contactWords(wire.to)];
    expect(sayToggle(firstWork(), 0, wire)).toBe(`${from} joined to ${to}.`);
    expect(sayToggle(once, 0, wire)).toBe(`${from} and ${to} taken apart.`);
    expect(sayToggle(addSecond(once), 0, wire)).toMatch(/^Lead 1: .* taken apart\.$/);
    expect(leadsOn(once)[0]?.conductors).toEqual([wire]);
    expect(isEmpty(toggleConductor(once, 0, wire))).toBe(true);
  });

  test('puts faults in and takes out the one that is meant', () => {
    const one = addFault(wired, 0, { kind: 'open', side: 'from', contact: '4' });
    const two = addFault(one, 0, { kind: 'short', side: 'to', between: ['tip', 'ring'] });
    expect(verdictOf(one).outcome).toBe('no-path');
    expect(leadsOn(dropFault(two, 0, 0))[0]?.faults.map(({ kind }) => kind)).toEqual(['short']);
    expect(isEmpty(clearLeads(two))).toBe(true);
  });

  test('of another end keeps what the new end has, wires and faults alike', () => {
    const faulty = addFault(wired, 0, { kind: 'open', side: 'to', contact: 'ring' });
    const ts = changeEnd(faulty, 0, 'to', { connector: 'ts-6.35', form: 'plug' });
    expect(
      leadsOn(ts)[0]
        ?.conductors.map(({ to }) => to)
        .sort(),
    ).toEqual(['sleeve', 'tip']);
    expect(leadsOn(ts)[0]?.faults).toEqual([]);
    expect(isWhole(ts)).toBe(true);
  });
});

describe('Changing a jack', () => {
  test('takes its plug along, for every connector and style on either side', () => {
    for (const side of ['output', 'input'] as const)
      for (const connector of CONNECTORS)
        for (const style of stylesFor(side === 'output' ? 'out' : 'in', connector)) {
          const work = changeJack(wired, side, { connector, style });
          const lead = leadsOn(work)[0];
          expect(jackOn(work, side)).toMatchObject({ connector, style });
          expect(lead?.[side === 'output' ? 'from' : 'to']).toEqual({ connector, form: 'plug' });
          expect(isWhole(work), `${side} ${connector} ${style}`).toBe(true);
        }
  });

  test('hands the same jack out as long as nothing about it changes', () => {
    expect(jackOn(wired, 'input')).toBe(jackOn(wired, 'input'));
    expect(jackOn(changeJack(wired, 'input', { part: 'PC900V' }), 'input').part).toBe('PC900V');
  });

  test('that the plan lost is a mistake of the program', () => {
    const lost: Work = { ...wired, plan: { ...wired.plan, devices: [] } };
    expect(() => jackOn(lost, 'output')).toThrow(/^bench: no jack 'out' on 'sender'$/);
  });
});

describe('A second lead', () => {
  test('is an adapter that takes the plug of the first and fits the input, contact to contact', () => {
    const two = addSecond(layLead(firstWork(), lineByLine(jackOn(wired, 'output'), jackOn(wired, 'input'))));
    const [first, second] = leadsOn(two);
    expect(second?.from).toEqual({ connector: first?.to.connector, form: 'jack' });
    expect(second?.to).toEqual({ connector: jackOn(two, 'input').connector, form: 'plug' });
    expect(second?.conductors.every(({ from, to }) => from === to)).toBe(true);
    expect([isWhole(two), verdictOf(two).outcome]).toEqual([true, 'flows']);
  });

  test('has a name of its own, also a third one', () => {
    const three = addSecond(addSecond(wired));
    expect(new Set(leadsOn(three).map(({ name }) => name)).size).toBe(3);
    expect(isWhole(three)).toBe(true);
  });

  test('goes again, and the first has a plug for the input then; one alone stays', () => {
    const back = dropSecond(addSecond(wired));
    expect(leadsOn(back)).toEqual(leadsOn(wired));
    expect(back.plan.leads).toHaveLength(1);
    expect(dropSecond(wired)).toBe(wired);
  });
});

describe('The figure of a work', () => {
  const verdict = verdictOf(wired);
  const drawing = drawWork(wired, verdict, 'active', 'solder', 900);
  const output = { segment: 0, side: 'from', contact: '4' } as const;
  const input = { segment: 0, side: 'to', contact: 'ring' } as const;

  test('draws every conductor with the current that was solved', () => {
    expect(drawing.conductors).toHaveLength(RIGHT.length);
    const source = drawing.conductors.find(({ from }) => from === '4');
    expect(source?.line).toBe('source');
    expect(Math.abs(source?.amperes ?? 0)).toBeCloseTo(verdict.inputs[0]?.active ?? 0, 4);
  });

  test('names its ends by where they are plugged in, also of two leads in series', () => {
    const names = (work: Work): readonly string[] =>
      drawWork(work, verdictOf(work), 'active', 'solder', 900).ends.map(({ name }) => name);
    expect(names(wired)).toEqual(['plug at the output', 'plug at the input']);
    expect(names(addSecond(wired))).toEqual([
      'plug at the output',
      'plug of lead 1',
      'jack of lead 2',
      'plug at the input',
    ]);
  });

  test('tells the line and the volts of a contact at either end, and nothing in the middle', () => {
    expect(lineOfRef(wired, output)).toBe('source');
    expect(lineOfRef(wired, input)).toBe('source');
    expect(readingOfRef(wired, verdict, 'active', output)).toBe(
      `source line, ${voltWords(verdict, 'active', { place: 'output', contact: '4' })}`,
    );
    expect(readingOfRef(wired, verdict, 'active', { ...output, contact: '1' })).toContain('spare contact');
    expect(lineOfRef(addSecond(wired), { segment: 0, side: 'to', contact: 'ring' })).toBeUndefined();
  });

  test('says floating where nothing holds a contact', () => {
    expect(voltWords(verdict, 'active', { place: 'output', contact: '1' })).toBe('floating');
  });

  test('finds the contact and the conductors that stand for a place of a jack', () => {
    expect(refOfSpot(wired, { place: 'output', contact: '4' })).toEqual(output);
    expect(refOfSpot(wired, { place: 'input', branch: 0, contact: 'ring' })).toEqual(input);
    expect(refOfSpot(addSecond(wired), { place: 'input', branch: 0, contact: 'tip' })?.segment).toBe(1);
    expect(conductorsAt(wired, '4', 'from')).toEqual([{ segment: 0, index: 0 }]);
    expect(conductorsAt(wired, '1', 'from')).toEqual([]);
  });
});

describe('A work from elsewhere', () => {
  test('comes back from its own address', async () => {
    expect(await fromAddress(await planHash(wired.plan))).toEqual({ work: wired });
    expect(await fromAddress('')).toEqual({});
  });

  test('is refused in words where the plan has no link', () => {
    expect(fromPlan(makePlan({}), 'The file')).toEqual({
      problem: 'The file was not opened. Why: links: expected at least one link to wire, got none.',
    });
  });
});
