import { describe, expect, test } from 'vitest';
import { gradeOf, talkMemory, worstGrade } from '../../../src/core/answer/grade.ts';
import type { TalkGrade, TypedPair } from '../../../src/core/answer/grade.ts';
import { GOODS, USUAL_PARTS, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Lead, Style } from '../../../src/core/wiring/index.ts';
import type { Socket, ToldJack } from '../../../src/core/answer/index.ts';

const GRADES = ['works', 'marginal', 'depends', 'nothing', 'harm'] as const;

function pair(
  [from, outputType]: readonly [Socket, Style],
  [to, inputType]: readonly [Socket, Style],
  more: { readonly output?: Partial<ToldJack>; readonly input?: Partial<ToldJack> } = {},
): TypedPair {
  return {
    output: { direction: 'out', socket: from, type: outputType, ...more.output },
    input: { direction: 'in', socket: to, type: inputType, ...more.input },
    outputType,
    inputType,
  };
}

const sold = (id: string): Lead => GOODS.find((one) => one.id === id)?.lead as Lead;
const A_TO_A = pair(['trs-6.35', 'type-a'], ['trs-6.35', 'type-a']);

describe('The worst of some grades', () => {
  test('is the later in the list, and harm outranks all', () => {
    GRADES.forEach((one, at) => {
      GRADES.forEach((other, place) => {
        expect(worstGrade([one, other])).toBe(GRADES[Math.max(at, place)]);
      });
    });
  });

  test('does not care for order or repetition, and of one grade is that grade', () => {
    const some: readonly TalkGrade[] = ['marginal', 'works', 'depends', 'works'];
    expect(worstGrade(some)).toBe('depends');
    expect(worstGrade(some.toReversed())).toBe('depends');
    expect(worstGrade([...some, ...some])).toBe('depends');
    for (const grade of GRADES) expect(worstGrade([grade])).toBe(grade);
  });

  test('of none at all is nothing', () => {
    expect(worstGrade([])).toBe('nothing');
  });
});

describe('How leads do between two types', () => {
  test('is that they work where every usual circuit flows at every corner', () => {
    expect(gradeOf(A_TO_A, [sold('trs-large')])).toBe('works');
    expect(gradeOf(pair(['din5', 'din'], ['din5', 'din']), [sold('din')])).toBe('works');
  });

  test('is the same whether the sender runs on 5 V or on 3.3 V, whichever named part listens, or none is told', () => {
    for (const circuit of ['driver-5v', 'driver-3v3', undefined] as const)
      for (const part of [...USUAL_PARTS, undefined]) {
        const told = { output: { circuit }, input: part ? { part } : {} };
        expect(gradeOf(pair(['din5', 'din'], ['din5', 'din'], told), [sold('din')])).toBe('works');
      }
  });

  test('is nothing where the loop is turned round or left open', () => {
    const turned = pair(['trs-3.5', 'type-a'], ['trs-3.5', 'type-b']);
    expect(gradeOf(turned, [sold('trs-small')])).toBe('nothing');
    const half = makeLead('trs-6.35', 'trs-6.35', wires('tip-tip', 'sleeve-sleeve'));
    expect(gradeOf(A_TO_A, [half])).toBe('nothing');
    expect(gradeOf(A_TO_A, [])).toBe('nothing');
  });

  test('is harm where a short drives a part over its rating with some usual circuit', () => {
    // Facts sheet, section 2: a TS plug in a Type A output puts its source line to ground, 0.383 W in the 33 ohm of a 3.3 V output,
    // whose rail is taken to bear 50 mA: 3.3 V / 33 ohm = 100 mA.
    expect(gradeOf(A_TO_A, [sold('ts-large')])).toBe('harm');
  });

  test('is no harm with the one circuit that bears it: 5 V by 220 ohm gives 22.7 mA', () => {
    const told = pair(['trs-6.35', 'type-a'], ['trs-6.35', 'type-a'], { output: { circuit: 'driver-5v' } });
    expect(gradeOf(told, [sold('ts-large')])).toBe('nothing');
  });

  test('is that it depends where one usual circuit behind the jack takes it and another does not', () => {
    // A ground-referenced output is low in active: a logic input reads that, and so does an LED fed from the input's own supply;
    // the lead that crosses tip and ring joins neither to the signal, so nothing of both is right.
    const straight = pair(['trs-3.5', 'tip-signal'], ['trs-3.5', 'tip-signal']);
    expect(gradeOf(straight, [sold('trs-small')])).not.toBe('nothing');
    expect(gradeOf(straight, [sold('trs-small-crossed')])).toBe('nothing');
  });

  test('is marginal where a part that needs 4 mA stands behind a 5 V output', () => {
    // Facts sheet, section 3: 4.5 V and R + 5 % leave a PC900V 4.89 mA; with its LED 0.3 V up still (4.5 - 1.4) V / 693 ohm = 4.47.
    // 100 m of 30 AWG out and back are 67.7 ohm and four corroded touches 40: 3.1 V / 804 ohm = 3.86 mA, below the 4 mA it needs,
    // while typical values leave 3.9 V / 768 ohm = 5.1 mA.
    const told = pair(['din5', 'din'], ['din5', 'din'], {
      output: { circuit: 'driver-5v' },
      input: { part: 'PC900V', circuit: 'receiver-isolated' },
    });
    expect(gradeOf(told, [sold('din')])).toBe('works');
    const long: Lead = { ...sold('din'), lengthMetres: 100, gauge: 30, contactOhms: 10 };
    expect(gradeOf(told, [long])).toBe('marginal');
  });
});

describe('A jack that receives on one contact and sends on the other', () => {
  const from = ['trs-3.5', 'type-a'] as const;
  const into = ['trs-3.5', 'tip-signal'] as const;
  const alone = pair(from, into);
  const shared = pair(from, into, { input: { inAndOut: true } });
  const bare = makeLead('trs-3.5', 'trs-3.5', wires('tip-tip', 'sleeve-sleeve'));

  test('is as good as any of its type through a lead that leaves the other half alone', () => {
    expect(gradeOf(shared, [bare])).toBe(gradeOf(alone, [bare]));
    expect(gradeOf(alone, [bare])).not.toBe('nothing');
  });

  test('is never good through a straight lead, which joins its sending contact to the sender', () => {
    expect(['depends', 'nothing', 'harm']).toContain(gradeOf(shared, [sold('trs-small')]));
    expect(gradeOf(alone, [sold('trs-small')])).toBe(gradeOf(alone, [bare]));
  });

  test('is never good through a TS plug, which joins its ring to its sleeve', () => {
    const large = pair(['trs-6.35', 'tip-signal'], ['trs-6.35', 'tip-signal'], { input: { inAndOut: true } });
    expect(['depends', 'nothing', 'harm']).toContain(gradeOf(large, [sold('ts-large')]));
  });

  test('joined half to half is never good: two outputs, or two inputs, meet', () => {
    const both = { output: { inAndOut: true }, input: { inAndOut: true } };
    const two = pair(['trs-3.5', 'tip-signal'], ['trs-3.5', 'tip-signal'], both);
    expect(gradeOf(two, [sold('trs-small')])).toBe('depends');
  });
});

describe('A memory of grades', () => {
  test('is asked first: one solution serves every series that joins the same contacts', () => {
    const memory = talkMemory();
    const lead = sold('trs-large');
    const first = gradeOf(A_TO_A, [lead], memory);
    const shuffled: Lead = { ...lead, name: 'another', conductors: lead.conductors.toReversed() };
    expect(gradeOf(A_TO_A, [shuffled], memory)).toBe(first);
    expect(memory.grades.size).toBe(1);
  });

  test('keeps apart what differs in types, in circuits or in contacts', () => {
    const memory = talkMemory();
    gradeOf(A_TO_A, [sold('trs-large')], memory);
    gradeOf(A_TO_A, [sold('ts-large')], memory);
    gradeOf(pair(['trs-6.35', 'type-b'], ['trs-6.35', 'type-a']), [sold('trs-large')], memory);
    const told = pair(['trs-6.35', 'type-a'], ['trs-6.35', 'type-a'], { output: { circuit: 'driver-5v' } });
    gradeOf(told, [sold('trs-large')], memory);
    expect(memory.grades.size).toBe(4);
  });

  test('takes Type A into Type A for DIN into DIN: the same lines are joined', () => {
    const memory = talkMemory();
    const grade = gradeOf(pair(['din5', 'din'], ['din5', 'din']), [sold('din')], memory);
    expect(gradeOf(A_TO_A, [sold('trs-large')], memory)).toBe(grade);
    expect(memory.grades.size).toBe(1);
    expect(gradeOf(A_TO_A, [sold('trs-large')])).toBe(grade);
  });

  test('holds what is solved without it', () => {
    const memory = talkMemory();
    for (const id of ['trs-large', 'ts-large']) {
      const kept = gradeOf(A_TO_A, [sold(id)], memory);
      expect(gradeOf(A_TO_A, [sold(id)])).toBe(kept);
    }
  });
});
