/** What goes on paper, rendered: the rows of a test, the board's sheet and its labels. */
import { describe, expect, test } from 'vitest';
import BoardSheet from '../../../components/board/BoardSheet.svelte';
import JackKey from '../../../components/board/JackKey.svelte';
import LabelsPaper from '../../../components/board/LabelsPaper.svelte';
import FullTest from '../../../components/making/FullTest.svelte';
import PaperRows from '../../../components/making/PaperRows.svelte';
import TestOnPaper from '../../../components/making/TestOnPaper.svelte';
import { resultOf } from '../../../components/making/test-result.ts';
import { NOT_BEGUN } from '../../../components/making/test-state.ts';
import {
  LENGTH_NOTE,
  checkBoard,
  demoBoard,
  deviceRows,
  leadLabels,
  linkRows,
  sayPrice,
  shoppingList,
  timePress,
} from '../../../src/core/board/index.ts';
import { answerTo, fullRows, proofRows } from '../../../src/core/making/index.ts';
import type { RowAnswer } from '../../../src/core/making/index.ts';
import { makePlan } from '../../../src/core/plan/index.ts';
import { makeLead, wires } from '../../../src/core/wiring/index.ts';
import { allOf, htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

const LEAD = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
const plan = demoBoard();
const check = checkBoard(plan, new Map());

describe('The test of a lead on paper', () => {
  const must = ({ expects }: { readonly expects: string }): string =>
    expects === 'beep' ? 'beep' : 'be silent';

  test('has a row and a box to tick for each reading', () => {
    const rows = proofRows(LEAD);
    const [table] = tablesOf(`<table>${htmlOf(PaperRows, { rows })}</table>`);
    expect(table?.rows).toEqual(rows.map((row) => [row.words, must(row), 'a box to tick on paper']));
  });

  test('counts its pairs when it is the full one: any two of all contacts', () => {
    // Six contacts of a DIN plug, its shell counted, and three of a TRS plug: nine, and 9 * 8 / 2 pairs of them.
    expect(fullRows(LEAD)).toHaveLength(36);
    const html = htmlOf(FullTest, { lead: LEAD, title: 'my lead' });
    expect(wordsOf(html)).toContain('my lead');
    expect(wordsOf(html)).toContain('36 pairs.');
    expect(tablesOf(html)[0]?.rows).toHaveLength(36);
  });
});

describe('A lead that was tested, on paper', () => {
  const rows = proofRows(LEAD);
  /** Every row as the plan has it. */
  const planned = new Map(
    rows.map((row) => [row.words, answerTo(row, () => (row.expects === 'beep' ? 'beep' : 'silent'))]),
  );
  const paperOf = (answers: ReadonlyMap<string, RowAnswer>, computer = ''): string => {
    const state = { ...NOT_BEGUN, answers, computer };
    return wordsOf(htmlOf(TestOnPaper, { lead: LEAD, test: { ...resultOf(LEAD, state), ...state } }));
  };

  test('has what was seen where the box to tick stood, and the box in a row that was not read', () => {
    const [first, ...others] = rows;
    const answers = new Map([...planned].filter(([words]) => words !== first?.words));
    const [table] = tablesOf(`<table>${htmlOf(PaperRows, { rows, answers })}</table>`);
    expect(table?.rows.map((row) => row[2])).toEqual([
      'a box to tick on paper',
      ...others.map(({ expects }) => (expects === 'beep' ? 'beep' : 'silent')),
    ]);
  });

  test('says under its rows that it is as planned, or which fault explains what was seen', () => {
    expect(paperOf(planned)).toContain('Tested: as planned.');
    const [wire] = rows.filter(({ expects }) => expects === 'beep');
    const open = new Map(planned).set(wire?.words ?? '', { of: 'conductor', said: 'silent' });
    expect(paperOf(open)).toMatch(/Not as planned\. Explained by: .*open/);
  });

  test('says what a computer found, and nothing of a meter that was not used', () => {
    const words = paperOf(new Map(), '2026-11-26: all arrived.');
    expect(words).toContain('With a computer interface, 2026-11-26: all arrived.');
    expect(words).not.toContain('Not tested');
  });
});

describe('The board on one page', () => {
  const html = htmlOf(BoardSheet, { plan, check });
  const [devices, links] = tablesOf(html);

  test('has every device with its channel and its feed, and every link with its leads', () => {
    const expected = deviceRows(plan);
    expect(devices?.rows.map((row) => row[1])).toEqual(expected.map(({ device }) => device));
    expected.forEach((row, at) => {
      expect(devices?.rows[at]?.[2]).toBe(row.channel === 0 ? 'none' : String(row.channel));
      if (row.fedBy !== '') expect(devices?.rows[at]?.[3]).toBe(row.fedBy);
    });
    expect(links?.rows.map((row) => [row[1], row[4], row[6]])).toEqual(
      linkRows(plan, check.outcomes).map(({ link, leads, outcome }) => [link, leads, outcome]),
    );
  });

  test('numbers a link as the drawing does', () => {
    for (const row of links?.rows ?? [])
      expect(plan.links[Number(row[0]) - 1]?.name, row.join()).toBe(row[1]);
    // With the second link gone the third is still 'link 3', and 3 in the drawing.
    const fewer = { ...plan, links: plan.links.filter((_, at) => at !== 1) };
    const [, table] = tablesOf(htmlOf(BoardSheet, { plan: fewer, check: checkBoard(fewer, new Map()) }));
    for (const row of table?.rows ?? []) expect(`link ${row[0]}`).toBe(row[1]);
  });

  test('has the key that the drawing on screen has, which tells outputs of both kinds from inputs', () => {
    const [caption = ''] = allOf(html, 'figcaption');
    for (const words of allOf(htmlOf(JackKey, {}), 'li')) expect(caption).toContain(words);
    expect(caption).not.toContain('filled');
  });

  test('says how the check stands, what one press takes and what is to be bought', () => {
    const words = wordsOf(html);
    const list = shoppingList(plan);
    expect(words).toContain(
      `To buy: ${sayPrice(list.total, list.currency)} in all, with invented prices in it. ${list.note}`,
    );
    expect(words).toContain(LENGTH_NOTE);
    expect(words).toContain(`One footswitch press: ${timePress(plan).bytes} bytes;`);
    const serious = check.findings.filter(({ severity }) => severity !== 'note');
    if (serious.length === 0) expect(words).toContain('Every check passes.');
    for (const { what } of serious) expect(words).toContain(what);
  });

  test('names what is wrong with a board whose lead fails', () => {
    const cut = { ...plan, leads: plan.leads.map((lead) => ({ ...lead, conductors: [] })) };
    const found = checkBoard(cut, new Map());
    expect(found.passes).toBe(false);
    expect(wordsOf(htmlOf(BoardSheet, { plan: cut, check: found }))).toContain('Not ready: ');
  });

  test('is a sheet of its own for an empty board as well', () => {
    const empty = makePlan({});
    const words = wordsOf(htmlOf(BoardSheet, { plan: empty, check: checkBoard(empty, new Map()) }));
    expect(words).toMatch(/^Board sheet /);
    expect(words).not.toContain('One footswitch press');
  });
});

describe('Labels', () => {
  test('are two for each lead, each naming its own end and the other', () => {
    const labels = leadLabels(plan);
    expect(labels).toHaveLength(2 * plan.leads.length);
    expect(allOf(htmlOf(LabelsPaper, { plan }), 'li')).toEqual(
      labels.map(({ lead, here, there }) => `${lead} ${here} other end: ${there}`),
    );
  });
});
