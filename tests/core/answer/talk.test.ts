import { describe, expect, test } from 'vitest';
import {
  SOCKETS,
  sayAmiss,
  sayAnswer,
  sayPair,
  sayUnfit,
  sayWhatToDo,
  willTheyTalk,
} from '../../../src/core/answer/index.ts';
import type { Socket, ToldJack } from '../../../src/core/answer/index.ts';
import { gradeOf, talkMemory } from '../../../src/core/answer/grade.ts';
import type { TypedPair } from '../../../src/core/answer/grade.ts';
import { throughBetween } from '../../../src/core/answer/talk.ts';
import { jacksOfType, openTypes } from '../../../src/core/answer/told.ts';
import { checkLink, findLead } from '../../../src/core/verdict/index.ts';
import { GOODS, stylesFor } from '../../../src/core/wiring/index.ts';
import type { Direction, Goods, Style } from '../../../src/core/wiring/index.ts';

const jack = (direction: Direction, socket: Socket, type?: Style): ToldJack => ({ direction, socket, type });
const memory = talkMemory();
const talk = (output: ToldJack, input: ToldJack, drawer: readonly string[] = []) =>
  willTheyTalk(output, input, drawer, memory);

const EVERY_PAIR = SOCKETS.flatMap((from) =>
  stylesFor('out', from).flatMap((out) =>
    SOCKETS.flatMap((to) => stylesFor('in', to).map((into) => ({ from, out, to, into }))),
  ),
);

describe('Will these two talk?', () => {
  test('DIN to Type B on 3.5 mm: the shop has a lead for it, by name', () => {
    const answer = talk(jack('out', 'din5', 'din'), jack('in', 'trs-3.5', 'type-b'));
    expect(answer.kind).toBe('buy');
    expect(sayAnswer(answer)).toBe('Yes, with the right lead');
    expect(sayWhatToDo(answer)).toBe('Ask for: a 5-pin DIN to 3.5 mm TRS lead, Type B.');
  });

  test('two of the drawer in a row do where neither does alone', () => {
    const answer = talk(jack('out', 'din5', 'din'), jack('in', 'trs-3.5', 'type-a'), [
      'din',
      'adapter-a',
      'ts-large',
    ]);
    expect(answer.kind).toBe('yours');
    expect(sayAnswer(answer)).toBe('Yes, with your DIN lead, then your Type A adapter');
    expect(answer.unfit.map(sayUnfit)).toEqual(['Your guitar lead: does not fit these two jacks.']);
  });

  test('a Type B adapter alone between DIN and Type B is told with the lead that it needs', () => {
    const answer = talk(jack('out', 'din5', 'din'), jack('in', 'trs-3.5', 'type-b'), ['adapter-b']);
    expect(answer.unfit.map(sayUnfit)).toEqual([
      'Your Type B adapter: fits only together with a 5-pin DIN lead, and then it works.',
    ]);
  });

  // DIN to Type A turned: the sink driver of the sender meets the source line, the LED blocks and only its protection diode conducts.
  test('what a shop may hand over in place of the right lead is told with what it costs', () => {
    const small = talk(jack('out', 'din5', 'din'), jack('in', 'trs-3.5', 'type-b'));
    expect(small.pairs[0]?.amiss.map(sayAmiss)).toEqual([
      'A 5-pin DIN to 3.5 mm TRS lead, Type A fits too, but do not take it: nothing arrives through it. It harms neither device.',
    ]);
    const large = talk(jack('out', 'trs-6.35', 'type-a'), jack('in', 'trs-6.35', 'type-a'));
    expect(large.pairs[0]?.amiss.map(sayAmiss)).toEqual([
      'A guitar lead fits too, but do not take it: it may damage a device.',
    ]);
    const alike = talk(jack('out', 'din5', 'din'), jack('in', 'din5', 'din'));
    expect(alike.pairs[0]?.amiss).toEqual([]);
  });

  test('a guitar lead between two Type A jacks may harm: it shorts the ring, 111 mA at worst of a 3.3 V sender (MMA CA-033)', () => {
    const answer = talk(jack('out', 'trs-6.35', 'type-a'), jack('in', 'trs-6.35', 'type-a'), ['ts-large']);
    expect(answer.drawer.map(({ worst }) => worst)).toEqual(['harm']);
    expect(answer.kind).toBe('buy');
  });

  test('a sender that only has data and ground drives no isolated listener through any lead', () => {
    const answer = talk(jack('out', 'trs-6.35', 'ring-signal'), jack('in', 'din5', 'din'));
    expect(answer.kind).toBe('none');
    expect(answer.drawn).toBeUndefined();
  });

  test('a type that nobody told is answered for each that it can be', () => {
    const answer = talk(jack('out', 'din5', 'din'), jack('in', 'trs-3.5'));
    expect(answer.pairs.map(({ inputType }) => inputType)).toEqual([...stylesFor('in', 'trs-3.5')]);
    expect(answer.kind).toBe('unsure');
    expect(answer.purchase).toBeDefined();
  });

  test('words that leave three types open are answered for these three', () => {
    const told: ToldJack = {
      ...jack('in', 'trs-3.5'),
      could: ['type-a', 'tip-signal', 'two-contact-turned'],
    };
    expect(new Set(openTypes(told))).toEqual(new Set(told.could));
  });
});

describe('Every pair of sockets and types', () => {
  test('is answered as the core solves it: a ready series or made lead works with every usual circuit, and where none is named none does', () => {
    let [ready, made, none] = [0, 0, 0];
    for (const { from, out, to, into } of EVERY_PAIR) {
      const [pair] = talk(jack('out', from, out), jack('in', to, into)).pairs;
      const links = (leads: readonly Parameters<typeof gradeOf>[1][number][]) =>
        jacksOfType(jack('out', from, out), out).flatMap((output) =>
          jacksOfType(jack('in', to, into), into).map((input) =>
            checkLink({ output, branches: [{ input, leads }] }, 'notes'),
          ),
        );
      const leads = pair?.ready?.leads ?? (pair?.made ? [pair.made] : undefined);
      const outcomes = leads && links(leads).map(({ outcome }) => outcome);
      if (pair?.ready) ready++;
      else if (pair?.made) made++;
      else none++;
      if (pair?.grade === 'works')
        expect(
          outcomes?.every((one) => one === 'flows'),
          `${from} ${out} ${to} ${into}`,
        ).toBe(true);
      else if (pair?.grade === 'marginal')
        expect(
          outcomes?.every((one) => one === 'flows' || one === 'weak'),
          `${from} ${out} ${to} ${into}`,
        ).toBe(true);
      else if (pair?.grade === 'depends')
        expect(outcomes?.some((one) => one === 'flows' || one === 'weak')).toBe(true);
      else {
        expect(leads, `${from} ${out} ${to} ${into}`).toBeUndefined();
        const [output] = jacksOfType(jack('out', from, out), out);
        const [input] = jacksOfType(jack('in', to, into), into);
        expect(output && input && findLead(output, input).answer, `${from} ${out} ${to} ${into}`).toBe(
          'no-passive-lead',
        );
      }
      expect(sayPair(pair as NonNullable<typeof pair>).length).toBeGreaterThan(0);
    }
    console.log(
      `${EVERY_PAIR.length} pairs: ${ready} ready made, ${made} to be made, ${none} without a passive lead`,
    );
    expect(ready + made + none).toBe(EVERY_PAIR.length);
  });
});

describe('A type that is not known', () => {
  test('is answered, for each that it can be, as if that one had been told; the drawer by the worst of them', () => {
    for (const from of SOCKETS)
      for (const to of SOCKETS) {
        const drawer = ['ts-large', 'trs-small', 'adapter-b'];
        // A memory of its own: nothing that another question left may decide.
        const open = willTheyTalk(jack('out', from), jack('in', to), drawer);
        const told = open.pairs.map(({ outputType, inputType }) =>
          talk(jack('out', from, outputType), jack('in', to, inputType), drawer),
        );
        expect(open.pairs, `${from} ${to}`).toEqual(told.map(({ pairs }) => pairs[0]));
        const order = ['works', 'marginal', 'depends', 'nothing', 'harm'];
        for (const { through, worst } of open.drawer) {
          const each = told.map(({ drawer: things }) =>
            order.indexOf(
              things.find(({ through: one }) => JSON.stringify(one.leads) === JSON.stringify(through.leads))
                ?.worst ?? 'nothing',
            ),
          );
          expect(order.indexOf(worst), `${from} ${to}`).toBe(Math.max(...each));
        }
      }
  });
});

describe('The smallest purchase', () => {
  /** Every subset of the goods by bit mask, smallest first: no cleverness at all. */
  function bruteForce(pairs: readonly TypedPair[], output: ToldJack, input: ToldJack): number | undefined {
    const series = throughBetween(GOODS, output, input).map(({ goods, leads }) => ({
      mask: goods.reduce((mask, one) => mask | (1 << GOODS.indexOf(one as Goods)), 0),
      grades: pairs.map((pair) => gradeOf(pair, leads, memory)),
    }));
    const safe = series.filter(({ grades }) => !grades.includes('harm'));
    const good = (at: number) =>
      safe
        .filter(({ grades }) => ['works', 'marginal'].includes(grades[at] as string))
        .map(({ mask }) => mask);
    const needs = pairs.map((_, at) => good(at)).filter((masks) => masks.length > 0);
    if (needs.length === 0) return undefined;
    let best: number | undefined;
    for (let mask = 1; mask < 1 << GOODS.length; mask++) {
      const size = mask.toString(2).replaceAll('0', '').length;
      if (best !== undefined && size >= best) continue;
      if (needs.every((masks) => masks.some((one) => (one & mask) === one))) best = size;
    }
    return best !== undefined && best <= 4 ? best : undefined;
  }

  test.each(SOCKETS.flatMap((from) => SOCKETS.map((to) => [from, to] as const)))(
    'from %s to %s is as small as trying all 32 767 sets finds',
    (from, to) => {
      const [output, input] = [jack('out', from), jack('in', to)];
      const pairs = openTypes(output).flatMap((outputType) =>
        openTypes(input).map((inputType) => ({ output, input, outputType, inputType })),
      );
      expect(talk(output, input).purchase?.length).toBe(bruteForce(pairs, output, input));
    },
  );
});
