import { describe, expect, test } from 'vitest';
import { checkBoard } from '../../../src/core/board/check.ts';
import { sayPrice } from '../../../src/core/board/prices.ts';
import { deviceRows, linkRows, planOfLead } from '../../../src/core/board/sheet.ts';
import { readPlan } from '../../../src/core/plan/read-plan.ts';
import { wiredBoard } from './boards.ts';

/** A switcher and three pedals in one chain, hardware THRUs, H11L1 inputs, one program change for each in turn. */
const PLAN = wiredBoard(3);

describe('The board sheet', () => {
  test('has each device with its channel, its feed, its place in the chain and what it is sent', () => {
    const rows = deviceRows(PLAN);
    expect(
      rows.map(({ device, channel, fedBy, links, sends }) => [device, channel, fedBy, links, sends]),
    ).toEqual([
      ['switcher', 0, '', 0, ''],
      ['pedal 1', 1, 'switcher: OUT 1', 1, 'program 1'],
      ['pedal 2', 2, 'pedal 1: THRU', 2, 'program 2'],
      ['pedal 3', 3, 'pedal 2: THRU', 3, 'program 3'],
    ]);
    // Six bytes of 320 us, and three optos of 1.2 us at their slower edge.
    expect(rows[3]?.arrivesSeconds).toBeCloseTo(6 * 320e-6 + 3 * 1.2e-6, 9);
  });

  test('says of a device that nothing feeds that it is not reached', () => {
    const rows = deviceRows({ ...PLAN, links: PLAN.links.slice(0, 2) });
    expect(rows[3]).toMatchObject({ fedBy: '', links: undefined, arrivesSeconds: undefined });
  });

  test('has each link with its leads and what the check says of it', () => {
    expect(linkRows(PLAN, checkBoard(PLAN).outcomes)[1]).toEqual({
      link: 'link 2',
      from: 'pedal 1: THRU',
      to: 'pedal 2: IN',
      leads: 'lead 2',
      lengthMetres: 4.01,
      outcome: 'Works',
    });
  });

  test('takes each lead apart as a plan of its own that opens elsewhere', () => {
    const alone = planOfLead(PLAN, 'lead 2');
    expect(readPlan(JSON.parse(JSON.stringify(alone)))).toEqual({ ok: true, plan: alone });
    expect(alone.devices.map(({ name, jacks }) => [name, jacks.map((jack) => jack.name)])).toEqual([
      ['pedal 1', ['THRU']],
      ['pedal 2', ['IN']],
    ]);
    expect(alone.leads.map(({ name }) => name)).toEqual(['lead 2']);
    expect(() => planOfLead(PLAN, 'lead 9')).toThrow("plan: no link uses a lead 'lead 9'");
  });

  test('writes prices with the sign of the reader, or without one', () => {
    expect([sayPrice(7, 'CHF'), sayPrice(0.125, ''), sayPrice(1200, '€')]).toEqual([
      'CHF 7.00',
      '0.13',
      '€ 1200.00',
    ]);
  });
});
