/** What a reader says of a row, as readings: held to the continuity table of leads made with a fault. */
import { describe, expect, it } from 'vitest';
import {
  CABLE_CORES,
  CABLE_METRES,
  CONDUCTOR_ANSWERS,
  FIRST_STOCK,
  FIRST_TAKES_METRES,
  agrees,
  answerTo,
  madeLead,
  proofRows,
  proveLead,
  readingsOf,
  sayRow,
  tableOf,
} from '../../../src/core/making/index.ts';
import type { ConductorAnswer, LeadFault, ProofRow } from '../../../src/core/making/index.ts';
import { makeLead, wires } from '../../../src/core/wiring/index.ts';

const LEAD = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
const ROWS = proofRows(LEAD);
const conductor = ROWS.find(({ expects }) => expects === 'beep') as ProofRow;
const apart = ROWS.find(({ expects, places }) => expects === 'silent' && places.length > 1) as ProofRow;

/** What somebody with a meter says of a conductor of a lead with these faults. */
function saidOf(row: ProofRow, faults: readonly LeadFault[]): ConductorAnswer {
  const says = tableOf(madeLead(LEAD, faults));
  const [still, from, to] = row.places.map((place) => says(place));
  if (still === 'silent') return 'silent';
  if (from === 'flickers') return to === 'flickers' ? 'both' : 'from';
  return to === 'flickers' ? 'to' : 'beep';
}

describe('the answer to a row of a conductor', () => {
  it('stands for readings that the lead with that fault would give', () => {
    const cold = (side: 'from' | 'to'): LeadFault => ({ kind: 'cold-joint', side, conductor: 0 });
    const cases: readonly (readonly LeadFault[])[] = [
      [],
      [{ kind: 'open', conductor: 0 }],
      [cold('from')],
      [cold('to')],
    ];
    for (const faults of cases) {
      const says = tableOf(madeLead(LEAD, faults));
      const readings = readingsOf(conductor, { of: 'conductor', said: saidOf(conductor, faults) });
      expect(readings.length).toBeGreaterThan(0);
      for (const reading of readings) expect(reading.says, JSON.stringify(reading)).toBe(says(reading));
    }
  });

  it('stands for one reading while no plug was moved, and for none that was not taken when it is silent', () => {
    const holds = (said: ConductorAnswer): readonly string[] =>
      readingsOf(conductor, { of: 'conductor', said }).map(({ hold }) => hold);
    expect(holds('still')).toEqual(['still']);
    expect(holds('silent')).toEqual(['still']);
    expect(holds('beep')).toEqual(['still', 'from', 'to']);
  });

  it('agrees with the plan only when it beeps however it is held', () => {
    const agreeing = CONDUCTOR_ANSWERS.filter(([said]) => agrees(conductor, { of: 'conductor', said }));
    expect(agreeing.map(([said]) => said)).toEqual(['beep']);
  });
});

describe('the answer to a row of a contact against others', () => {
  it('is silent but for the places that were ticked', () => {
    const readings = readingsOf(apart, { of: 'apart', beeping: [1] });
    expect(readings.map(({ says }) => says)).toEqual(
      apart.places.map((_, at) => (at === 1 ? 'beep' : 'silent')),
    );
    expect(agrees(apart, { of: 'apart', beeping: [] })).toBe(true);
    expect(agrees(apart, { of: 'apart', beeping: [1] })).toBe(false);
  });

  it('says where it beeps, and nothing as long as nothing was read', () => {
    expect(sayRow(apart, [])).toBeUndefined();
    expect(sayRow(apart, readingsOf(apart, { of: 'apart', beeping: [] }))).toBe('silent');
    const short = proofRows(LEAD).find(({ words }) => words.startsWith('ring at the input end')) as ProofRow;
    expect(sayRow(short, readingsOf(short, { of: 'apart', beeping: [0] }))).toBe(
      'beeps to sleeve at the input end',
    );
  });
});

describe('the answer to a lead that lies there', () => {
  it('is what somebody with a meter says, row by row, and stands for readings of that lead', () => {
    const cases: readonly (readonly LeadFault[])[] = [
      [],
      [{ kind: 'open', conductor: 0 }],
      [{ kind: 'cold-joint', side: 'from', conductor: 0 }],
      [
        { kind: 'cold-joint', side: 'from', conductor: 0 },
        { kind: 'cold-joint', side: 'to', conductor: 0 },
      ],
      [{ kind: 'short', side: 'to', between: ['ring', 'sleeve'] }],
      [{ kind: 'mirrored', side: 'from' }],
    ];
    for (const faults of cases) {
      const says = tableOf(madeLead(LEAD, faults));
      expect(answerTo(conductor, says)).toEqual({ of: 'conductor', said: saidOf(conductor, faults) });
      for (const row of ROWS)
        for (const reading of readingsOf(row, answerTo(row, says)))
          expect(reading.says === 'silent', JSON.stringify(reading)).toBe(says(reading) === 'silent');
    }
  });

  it('agrees with the plan in every row of a lead as planned, and not of one with a short', () => {
    const agreed = (faults: readonly LeadFault[]): boolean =>
      ROWS.every((row) => agrees(row, answerTo(row, tableOf(madeLead(LEAD, faults)))));
    expect(agreed([])).toBe(true);
    expect(agreed([{ kind: 'short', side: 'to', between: ['ring', 'sleeve'] }])).toBe(false);
  });
});

describe('all rows answered as planned', () => {
  it('leave nothing of the full table unread', () => {
    const readings = ROWS.flatMap((row) =>
      readingsOf(
        row,
        row.expects === 'beep' ? { of: 'conductor', said: 'beep' } : { of: 'apart', beeping: [] },
      ),
    );
    expect(proveLead(LEAD, readings)).toMatchObject({
      state: 'as-planned',
      sentence: 'The lead is as planned: every reading of the full table agrees.',
    });
  });
});

describe('the stock that is asked for', () => {
  it('begins inside its own bounds', () => {
    for (const metres of [FIRST_STOCK.outsideMetres, FIRST_TAKES_METRES]) {
      expect(metres).toBeGreaterThanOrEqual(CABLE_METRES[0]);
      expect(metres).toBeLessThanOrEqual(CABLE_METRES[1]);
    }
    expect(FIRST_STOCK.cores).toBeGreaterThanOrEqual(CABLE_CORES[0]);
    expect(FIRST_STOCK.cores).toBeLessThanOrEqual(CABLE_CORES[1]);
  });
});
