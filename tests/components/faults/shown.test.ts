/** The parts of the page Find the fault, rendered from what the core answers. */
import { describe, expect, test } from 'vitest';
import LeadDrawn from '../../../components/faults/LeadDrawn.svelte';
import NameIt from '../../../components/faults/NameIt.svelte';
import Observations from '../../../components/faults/Observations.svelte';
import PartPicture from '../../../components/faults/PartPicture.svelte';
import RoundEnd from '../../../components/faults/RoundEnd.svelte';
import Suspects from '../../../components/faults/Suspects.svelte';
import {
  BOARD_NAMES,
  BOARD_PARTS,
  jackName,
  sayChance,
  saySpots,
} from '../../../components/faults/boards.ts';
import {
  BENCH_BOARDS,
  OBSERVATION_WAYS,
  USUAL_FREQUENCIES,
  answerFaults,
  benchTable,
  faultName,
  hideNumberedFault,
} from '../../../src/core/faults/index.ts';
import type { GuideAnswer, RoundAnswer, RoundOrder } from '../../../src/core/faults/index.ts';
import { allOf, htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

const round = (more: Partial<RoundOrder> = {}): RoundAnswer =>
  answerFaults({
    kind: 'round',
    board: 'link',
    hidden: 7,
    made: [],
    end: undefined,
    ...more,
  }) as RoundAnswer;
const nothing = (): void => undefined;

describe('What may be observed', () => {
  const props = { place: 'lead 1', detail: 'TRS to TRS', over: false, onmade: nothing } as const;

  test('stands under its effort, with nothing seen before it was taken', () => {
    const { choices } = round();
    const html = htmlOf(Observations, { ...props, choices });
    expect(allOf(html, 'button')).toEqual(
      OBSERVATION_WAYS.flatMap((way) => choices.filter((one) => one.way === way).map(({ words }) => words)),
    );
    expect(allOf(html, 'h4')).toEqual(
      OBSERVATION_WAYS.filter((way) => choices.some((one) => one.way === way)),
    );
    expect(wordsOf(html)).toMatch(/^At lead 1 TRS to TRS /);
    expect(allOf(html, 'strong')).toEqual([]);
  });

  test('shows what was seen once it was taken, beside what a board in order shows', () => {
    const [first] = round().choices;
    const { choices } = round({ made: [first?.id ?? ''] });
    const html = htmlOf(Observations, { ...props, choices });
    const taken = choices.find(({ seen }) => seen !== undefined);
    expect(allOf(html, 'strong')).toEqual([taken?.seen]);
    expect(allOf(html, 'button')).not.toContain(taken?.words);
    expect(wordsOf(html)).toContain(
      taken?.seen === taken?.good ? 'as on a board in order' : `on a board in order: ${taken?.good ?? ''}`,
    );
  });

  test('can no longer be taken when the round is over', () => {
    const html = htmlOf(Observations, { ...props, choices: round().choices, over: true });
    const buttons = html.match(/<button[^>]*>/g) ?? [];
    expect(buttons.length).toBeGreaterThan(3);
    expect(buttons.every((button) => / disabled/.test(button))).toBe(true);
  });
});

/** Names of what answers to a finger or a key in a drawing, in order. */
const pressed = (html: string): readonly string[] =>
  [...html.matchAll(/role="button"[^>]*aria-label="([^"]*)"/g)].map(([, name = '']) => name);

describe('A part drawn large', () => {
  const sender = BOARD_PARTS.link[0];
  const thru = BOARD_PARTS.chain[2];
  const [lead] = round({ board: 'chain' }).leads;
  if (!sender || !thru || !lead) throw new Error('needs a sender, a pedal with THRU and a lead');

  test('is a picture for the eye alone where nothing is to be touched', () => {
    expect(pressed(htmlOf(PartPicture, { part: sender }))).toEqual([]);
  });

  test('is a device with its lamp, its display and each of its jacks to touch', () => {
    expect(pressed(htmlOf(PartPicture, { part: sender, onspot: nothing }))).toEqual([
      'lamp of the sender',
      'display of the sender',
      'OUT of the sender',
    ]);
    const html = htmlOf(PartPicture, { part: thru, spots: ['display'], onspot: nothing });
    expect(pressed(html)).toEqual([
      'lamp of pedal 1',
      'display of pedal 1',
      'IN of pedal 1',
      'THRU of pedal 1',
    ]);
    expect(html.match(/aria-pressed="true"/g)).toHaveLength(1);
  });

  test('is a lead with both plugs, every contact and every wire to touch', () => {
    const html = htmlOf(LeadDrawn, { lead, spots: ['from ring', 'to 4'], onspot: nothing });
    const names = pressed(html);
    // TRS to DIN: 3 contacts, 5 pins and the shell, 3 wires, 2 plugs.
    expect(names).toHaveLength(3 + 6 + 3 + 2);
    for (const name of ['sending plug', 'receiving plug', 'conductor from ring to pin 4'])
      expect(names).toContain(name);
    // The wire, and both of its contacts.
    expect(html.match(/aria-pressed="true"/g)).toHaveLength(3);
  });
});

describe('The names of faults', () => {
  test('are all there to choose from, by place', () => {
    const { names } = round();
    const options = allOf(htmlOf(NameIt, { names, onname: nothing, onshow: nothing }), 'option');
    for (const { words } of names) expect(options.some((option) => words.includes(option))).toBe(true);
    expect(options.length).toBeGreaterThanOrEqual(names.length);
  });
});

describe('The end of a round', () => {
  const hidden = hideNumberedFault('link', 7);
  const shown = (end: RoundOrder['end']): string => {
    const answer = round({ end }).end;
    if (!answer) throw new Error('needs an end');
    return wordsOf(htmlOf(RoundEnd, { end: answer, onanother: nothing }));
  };

  test('says found or guessed, what it was and what to do, in the words of the core', () => {
    const words = shown({ named: faultName(hidden.fault) });
    const { end } = round({ end: { named: faultName(hidden.fault) } });
    expect(words).toMatch(/^(Found|Guessed) /);
    expect(words).toContain(end?.grade?.sentence);
    expect(words).toContain(`What to do. ${end?.remedy ?? ''}`);
  });

  test('says missed, and how few observations would have done', () => {
    const table = benchTable('link');
    const wrong = table.faults.find(
      (fault) => !round({ end: { named: faultName(fault) } }).end?.grade?.right,
    );
    if (!wrong) throw new Error('needs a fault that is not the hidden one');
    const words = shown({ named: faultName(wrong) });
    expect(words).toMatch(/^Missed /);
    expect(words).toContain('You took 0; the best way takes');
  });

  test('tells the fault without a grade when the reader asked for it', () => {
    expect(shown('shown')).toMatch(/^The fault It was: /);
  });
});

describe('The faults that are left', () => {
  const guide = answerFaults({
    kind: 'guide',
    board: 'link',
    symptoms: undefined,
    made: [],
    skipped: [],
    hasMeter: true,
    frequencies: USUAL_FREQUENCIES,
  }) as GuideAnswer;

  test('stand in order of their chance, which is said; what to do only when few are left', () => {
    const { suspects, remedies } = guide;
    const all = htmlOf(Suspects, { suspects, remedies });
    const [table] = tablesOf(all);
    expect(table?.rows).toEqual(suspects.map(({ words, probability }) => [words, sayChance(probability)]));
    expect(wordsOf(all)).not.toContain('What to do.');
    const [first] = suspects;
    const few = htmlOf(Suspects, { suspects: suspects.slice(0, 1), remedies });
    expect(wordsOf(few)).toContain(`What to do. ${remedies[first?.name ?? ''] ?? ''}`);
  });

  test('are no table when there are none', () => {
    expect(wordsOf(htmlOf(Suspects, { suspects: [], remedies: {} }))).toBe('');
  });
});

describe('Boards and chances in words', () => {
  test('name every board and every place that a fault can have on it', () => {
    expect(new Set(Object.values(BOARD_NAMES)).size).toBe(BENCH_BOARDS.length);
    for (const board of BENCH_BOARDS) {
      const rows = BOARD_PARTS[board].map(({ name }) => name);
      expect(new Set(benchTable(board).faults.map(({ place }) => place))).toEqual(new Set(rows));
    }
  });

  test('name what is touched of a part', () => {
    expect(saySpots(['lamp'])).toBe('the lamp');
    expect(saySpots(['to plug'])).toBe('the receiving plug');
    expect(saySpots(['from ring'])).toBe('ring of the sending plug');
    expect(saySpots(['from ring', 'to 4'])).toBe('the wire from ring to pin 4');
    const [sender, , pedal] = BOARD_PARTS.chain;
    expect(sender && jackName(sender, 1)).toBe('OUT of the sender');
    expect(pedal && [0, 1].map((side) => jackName(pedal, side))).toEqual([
      'IN of pedal 1',
      'THRU of pedal 1',
    ]);
  });

  test('round to whole percents, and never to nothing', () => {
    expect([0.004, 0.01, 0.214, 1].map(sayChance)).toEqual(['under 1 %', '1 %', '21 %', '100 %']);
  });
});
