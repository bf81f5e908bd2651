import { describe, expect, test } from 'vitest';
import {
  SOCKETS,
  sayAnswer,
  sayDrawer,
  sayPair,
  saySocket,
  sayType,
  sayWhatToDo,
  willTheyTalk,
} from '../../../src/core/answer/index.ts';
import type { TalkAnswer } from '../../../src/core/answer/index.ts';
import { GOODS, STYLES, styleEntry } from '../../../src/core/wiring/index.ts';
import type { Goods, Style } from '../../../src/core/wiring/index.ts';
import type { TalkGrade } from '../../../src/core/answer/grade.ts';
import type { DrawerAnswer, PairAnswer, Through } from '../../../src/core/answer/talk.ts';

const goods = (id: string): Goods => GOODS.find((one) => one.id === id) as Goods;
const through = (...ids: readonly string[]): Through => ({
  goods: ids.map(goods),
  leads: ids.map((id) => goods(id).lead),
});
const drawer = (worst: TalkGrade, best: TalkGrade, ...ids: readonly string[]): DrawerAnswer => ({
  through: through(...ids),
  worst,
  best,
});
const pair = (more: Partial<PairAnswer> = {}): PairAnswer => ({
  outputType: 'din',
  inputType: 'type-a',
  ready: undefined,
  made: undefined,
  grade: 'nothing',
  amiss: [],
  ...more,
});
const answer = (kind: TalkAnswer['kind'], more: Partial<TalkAnswer> = {}): TalkAnswer => ({
  kind,
  pairs: [pair()],
  drawer: [],
  unfit: [],
  purchase: undefined,
  drawn: undefined,
  ...more,
});

describe('A jack in a player’s words', () => {
  test('is what it looks like, each socket in words of its own', () => {
    expect(SOCKETS.map(saySocket)).toEqual([
      'round, five holes (DIN)',
      'large jack, 6.35 mm (¼ inch)',
      'small jack, 3.5 mm',
      'tiny jack, 2.5 mm',
    ]);
  });

  test('is what its manual may say, and the pins named stand where the type has them', () => {
    // RP-054: tip is DIN 5, ring is DIN 4, sleeve is DIN 2; Type B the other way round.
    for (const style of STYLES) {
      const { lines } = styleEntry(style);
      for (const [, pin, contact] of sayType(style).matchAll(/pin (\d) on the (\w+)/g))
        expect({ 4: lines.source, 5: lines.sink }[Number(pin) as 4 | 5], style).toBe(contact);
      for (const [, contact] of sayType(style).matchAll(/data on the (\w+)/g))
        expect(lines.sink).toBe(contact);
      for (const [, contact] of sayType(style).matchAll(/nothing on the (\w+)/g))
        expect(Object.values(lines)).not.toContain(contact);
    }
    expect(new Set(STYLES.map(sayType)).size).toBe(STYLES.length);
  });
});

describe('The answer in one line', () => {
  test('names what the player has', () => {
    const own = answer('yours', { drawer: [drawer('works', 'works', 'din', 'adapter-a')] });
    expect(sayAnswer(own)).toBe('Yes, with your DIN lead, then your Type A adapter');
    expect(sayWhatToDo(own)).toBe('You need nothing else.');
  });

  test('warns where what the player has leaves little to spare', () => {
    const own = answer('yours', { drawer: [drawer('marginal', 'works', 'din')] });
    expect(sayWhatToDo(own)).toBe(
      'It should work, but some devices leave little to spare: keep the lead short.',
    );
  });

  test('names what a shop calls it', () => {
    const buy = answer('buy', { pairs: [pair({ ready: through('din', 'adapter-b'), grade: 'works' })] });
    expect(sayAnswer(buy)).toBe('Yes, with the right lead');
    expect(sayWhatToDo(buy)).toBe(
      'Ask for: a 5-pin DIN lead, then a Type B adapter: 5-pin DIN socket to 3.5 mm TRS plug.',
    );
  });

  test('says of a lead to be made whether it is sure', () => {
    const sure = answer('make', { pairs: [pair({ made: goods('din').lead, grade: 'works' })] });
    expect(sayAnswer(sure)).toBe('Yes, with a lead made for them');
    expect(sayWhatToDo(sure)).toBe(
      'No shop sells this lead ready made. Solder it from the build sheet, or have it made from that sheet.',
    );
    const perhaps = answer('make', { pairs: [pair({ made: goods('din').lead, grade: 'depends' })] });
    expect(sayAnswer(perhaps)).toBe('Perhaps, with a lead made for them');
    expect(sayWhatToDo(perhaps)).toMatch(/Ask the maker before you have one made\.$/);
  });

  test('is sure of an unknown type only where every type has a lead and one thing serves them all', () => {
    const served = pair({ ready: through('din'), grade: 'works' });
    const unsure = (pairs: readonly PairAnswer[], purchase: TalkAnswer['purchase']) =>
      sayAnswer(answer('unsure', { pairs, purchase }));
    expect(unsure([served, served], [goods('din')])).toBe('Yes, whatever the type is');
    expect(unsure([served, served], [goods('din'), goods('adapter-a')])).toBe(
      'Most likely, once you know the type',
    );
    expect(unsure([served, pair()], [goods('din')])).toBe('Most likely, once you know the type');
    expect(unsure([served, pair()], undefined)).toBe('That depends on the type');
  });

  test('says what to buy while the type is not known: nothing, one thing, or several', () => {
    const buy = (...ids: readonly string[]) =>
      sayWhatToDo(answer('unsure', { purchase: ids.length === 0 ? undefined : ids.map(goods) }));
    expect(buy()).toBe(
      'Nothing that shops sell covers every type this can be. Find out the type first: the manual, the maker, or three checks with a meter.',
    );
    expect(buy('din')).toBe(
      'One thing serves every type that ready-made leads can serve: a 5-pin DIN lead. It harms neither device.',
    );
    expect(buy('din', 'din-small-a', 'din-small-b')).toBe(
      'The least that serves every type that ready-made leads can serve: a 5-pin DIN lead, a 5-pin DIN to 3.5 mm TRS lead, Type A and a 5-pin DIN to 3.5 mm TRS lead, Type B. Try them in turn; none of them harms either device.',
    );
  });

  test('is no where no plain lead can, with what would', () => {
    expect(sayAnswer(answer('none'))).toBe('No, not with a plain lead');
    expect(sayWhatToDo(answer('none'))).toBe(
      'No plain lead or adapter can make these two talk. Put a powered converter between them, or use another jack on one of them.',
    );
  });
});

describe('One thing of the drawer', () => {
  test('is told by the worst that it may do, harm first', () => {
    expect(sayDrawer(drawer('harm', 'works', 'ts-large'))).toBe(
      'Do not connect your guitar lead: it may damage a device.',
    );
    expect(sayDrawer(drawer('works', 'works', 'din'))).toBe('Your DIN lead: works.');
    expect(sayDrawer(drawer('marginal', 'works', 'din'))).toBe('Your DIN lead: works, with little to spare.');
    expect(sayDrawer(drawer('depends', 'works', 'din'))).toBe(
      'Your DIN lead: depends on the inside of the devices.',
    );
    expect(sayDrawer(drawer('nothing', 'nothing', 'din'))).toBe('Your DIN lead: does nothing.');
    expect(sayDrawer(drawer('nothing', 'works', 'din'))).toBe(
      'Your DIN lead: works only with some of the types it can be.',
    );
  });

  test('is two things in a row where it takes two', () => {
    expect(sayDrawer(drawer('works', 'works', 'din', 'adapter-a'))).toBe(
      'Your DIN lead, then your Type A adapter in a row: works.',
    );
    expect(sayDrawer(drawer('harm', 'harm', 'din', 'adapter-a'))).toBe(
      'Do not connect your DIN lead, then your Type A adapter in a row: it may damage a device.',
    );
  });

  test('is called by its name in the shop where players have no other', () => {
    expect(sayDrawer(drawer('works', 'works', 'trs-small-crossed'))).toBe(
      'Your 3.5 mm TRS lead, Type A to Type B: works.',
    );
  });
});

describe('A row for a pair of types', () => {
  test('names what is sold, else the lead to make, else why there is none', () => {
    expect(sayPair(pair({ ready: through('din'), grade: 'works' }))).toBe('a 5-pin DIN lead');
    expect(sayPair(pair({ made: goods('din-small-a').lead, grade: 'works' }))).toBe(
      'a lead made for it: pin 4 to ring, pin 5 to tip, pin 2 to sleeve',
    );
    expect(sayPair(pair({ grade: 'harm' }))).toBe('no lead: it may damage a device');
    expect(sayPair(pair())).toBe('no plain lead can');
  });
});

describe('An answer that is solved', () => {
  const told = (direction: 'out' | 'in', type: Style) =>
    ({ direction, socket: type === 'din' ? 'din5' : 'trs-3.5', type }) as const;

  test('says the same of a Type B world as of a Type A world: all the tips and rings changed about', () => {
    const turned = (style: Style): Style =>
      ({ 'type-a': 'type-b', 'type-b': 'type-a' }[style as string] as Style | undefined) ?? style;
    for (const out of ['type-a', 'type-b'] as const)
      for (const into of ['type-a', 'type-b', 'both-ways'] as const) {
        const here = willTheyTalk(told('out', out), told('in', into), []);
        const there = willTheyTalk(told('out', turned(out)), told('in', turned(into)), []);
        expect(sayAnswer(here), `${out} ${into}`).toBe(sayAnswer(there));
        expect(here.kind).toBe(there.kind);
      }
  });

  test('does not hang on the order in which the drawer is told, and more in it never takes a yes away', () => {
    const ids = ['din', 'adapter-a', 'adapter-b', 'trs-small', 'ts-large'];
    const from = told('out', 'din');
    const to = told('in', 'type-b');
    const all = willTheyTalk(from, to, ids);
    expect(willTheyTalk(from, to, ids.toReversed())).toEqual(all);
    expect(all.kind).toBe('yours');
    for (let count = 0; count <= ids.length; count++) {
      const some = willTheyTalk(from, to, ids.slice(0, count));
      expect(some.kind).toBe(count >= 3 ? 'yours' : 'buy');
    }
  });

  test('takes a thing of the drawer that it does not know for none', () => {
    expect(willTheyTalk(told('out', 'din'), told('in', 'din'), ['no such thing'])).toMatchObject({
      kind: 'buy',
      drawer: [],
      unfit: [],
    });
  });
});
