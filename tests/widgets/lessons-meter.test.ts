import type { Locator } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { jacks } from '../../content/lessons/09-ask-the-jack/data.ts';
import { links as toSolder } from '../../content/lessons/10-solder-it/data.ts';
import { links as toProve, readings } from '../../content/lessons/11-prove-it/data.ts';
import { piles } from '../../content/lessons/12-when-nothing-answers/data.ts';
import {
  firstLead,
  linkFrom,
  pileFrom,
  placeFrom,
  sayMeter,
  solve,
  symptomGroups,
  type MeterSetting,
  type ProbePair,
} from '../../src/core/learn/index.ts';
import {
  CUP_METRES,
  bareEnd,
  cableSheet,
  madeLead,
  proofRows,
  proveLead,
  sayBareEnd,
  sayLeadFault,
  tableOf,
} from '../../src/core/making/index.ts';
import type { Beep, LeadFault } from '../../src/core/making/index.ts';
import { bitsOfObservation, fewestExpected } from '../../src/core/faults/index.ts';
import { checkLink } from '../../src/core/verdict/index.ts';
import { layConductor, makeLead } from '../../src/core/wiring/index.ts';
import type { MeterProfileName } from '../../src/core/readings/index.ts';
import { openPart } from '../support/lesson-page.ts';

const ASK = '/lessons/ask-the-jack/';

/** What the widget has to say of a jack: where the probes are, and what the core reads there. */
function reading(
  name: keyof typeof jacks,
  setting: MeterSetting,
  probes: ProbePair,
  profile?: MeterProfileName,
): string {
  const [red, black] = probes.split('-');
  const says = sayMeter(jacks[name], setting, probes, profile).replaceAll('\u00a0', ' ');
  return `Red on ${red}, black on ${black}: ${says}. `;
}

const statusOf = (part: Locator): Locator => part.locator('.probe-jack').getByRole('status');

test('in asking a jack the probes go round a silent input by keyboard, and every pair shows nothing', async ({
  page,
}) => {
  const part = await openPart(page, ASK, 1);
  await expect(statusOf(part)).toContainText(reading('out', 'volts idle', 'ring-sleeve'));
  await part.getByRole('radio', { name: 'jack 1' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(statusOf(part)).toContainText(reading('in', 'volts idle', 'ring-sleeve'));
  await part.getByRole('button', { name: 'tip', exact: true }).press('b');
  await expect(statusOf(part)).toContainText(reading('in', 'volts idle', 'ring-tip'));
  await part.getByRole('button', { name: 'sleeve', exact: true }).press('r');
  await expect(statusOf(part)).toContainText(reading('in', 'volts idle', 'sleeve-tip'));
});

test('in asking a jack the sign under clock changes with the type, and with the probes', async ({ page }) => {
  const part = await openPart(page, ASK, 2);
  await expect(statusOf(part)).toContainText(reading('out', 'volts idle', 'ring-tip'));
  await part.getByRole('radio', { name: /clock running/ }).press('Space');
  await expect(statusOf(part)).toContainText(reading('out', 'volts clock', 'ring-tip'));
  await part.getByRole('radio', { name: 'Type B' }).press('Space');
  await expect(statusOf(part)).toContainText(reading('outTurned', 'volts clock', 'ring-tip'));
  await part.getByRole('button', { name: 'Swap probes' }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('outTurned', 'volts clock', 'tip-ring'));
});

test('in asking a jack the diode test reads both ways, and a weaker meter shows overload', async ({
  page,
}) => {
  const part = await openPart(page, ASK, 3);
  await expect(statusOf(part)).toContainText(reading('in', 'diode off', 'ring-tip'));
  await part.getByRole('button', { name: 'Swap probes' }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('in', 'diode off', 'tip-ring'));
  await part.getByRole('button', { name: 'Swap probes' }).press('Enter');
  await part.getByRole('radio', { name: /ends at 1\.5 V/ }).press('Space');
  await expect(statusOf(part)).toContainText(reading('in', 'diode off', 'ring-tip', 'low-diode'));
});

test('in asking a jack the LED glows once the black probe is on the sleeve', async ({ page }) => {
  const part = await openPart(page, ASK, 4);
  await expect(statusOf(part)).toContainText(reading('out', 'led clock', 'ring-tip'));
  await part.getByRole('button', { name: 'sleeve', exact: true }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('out', 'led clock', 'ring-sleeve'));
  await part.getByRole('button', { name: 'tip', exact: true }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('out', 'led clock', 'tip-sleeve'));
  await part.getByRole('radio', { name: '3.3 V output' }).press('Space');
  await expect(statusOf(part)).toContainText(reading('outLow', 'led clock', 'tip-sleeve'));
});

test('in asking a jack resistance parts what volts could not', async ({ page }) => {
  const part = await openPart(page, ASK, 5);
  await expect(statusOf(part)).toContainText(reading('switches', 'volts idle', 'ring-sleeve'));
  await part.getByRole('radio', { name: /^resistance/ }).press('Space');
  await expect(statusOf(part)).toContainText(reading('switches', 'ohms off', 'ring-sleeve'));
  await part.getByRole('radio', { name: '3.3 V output' }).press('Space');
  await expect(statusOf(part)).toContainText(reading('outLow', 'ohms off', 'ring-sleeve'));
});

const SOLDER = '/lessons/solder-it/';
test('in soldering the steps are put in order by keyboard, and one taken too soon is named', async ({
  page,
}) => {
  const { steps } = cableSheet(firstLead(toSolder.right), linkFrom(toSolder.right));
  const part = await openPart(page, SOLDER, 1);
  const status = part.locator('.next-step').getByRole('status');
  const left = part.getByRole('list', { name: 'Steps left' }).getByRole('button');
  expect(await left.allTextContents()).not.toEqual(steps);
  expect([...(await left.allTextContents())].sort()).toEqual([...steps].sort());
  await part.getByRole('button', { name: steps.at(-1) ?? '' }).press('Enter');
  await expect(status).toHaveText(`Too soon. Before it comes: ${steps[0] ?? ''}`);
  for (const step of steps) await part.getByRole('button', { name: step }).press('Enter');
  await expect(status).toHaveText('All in order: nothing has to be done twice.');
  await expect(part.getByRole('list', { name: 'Steps done' }).getByRole('listitem')).toHaveText([...steps]);
});

/** The solder side of a DIN plug, key down, left to right (two secondary pages): 1 4 2 5 3. */
const CUPS = ['1', '4', '2', '5', '3'];
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth'];

for (const [how, pins] of [
  ['right', ['4', '5', '2']],
  ['mirrored', ['5', '4', '2']],
  ['on three other cups', ['1', '2', '3']],
] as const) {
  test(`in soldering three wires soldered by keyboard, ${how}, give the lead that the core solves`, async ({
    page,
  }) => {
    const part = await openPart(page, SOLDER, 2);
    const plug = part.getByRole('group', { name: /^Solder side of the plug/ });
    for (const pin of pins) {
      const cup = plug.getByRole('button', {
        name: `${ORDINALS[CUPS.indexOf(pin)] ?? ''} cup from the left, empty`,
      });
      await cup.press('Enter');
    }
    const link = linkFrom(toSolder.right);
    const input = link.branches[0]?.input;
    if (input === undefined) throw new Error('the lead to solder: needs an input, got none');
    const made = ['ring', 'tip', 'sleeve'].reduce(
      (lead, to, at) => layConductor(lead, pins[at] ?? '4', to as 'ring'),
      makeLead('din5', 'trs-3.5', []),
    );
    const status = part.locator('.cups').getByRole('status');
    await expect(status).toContainText(checkLink({ ...link, branches: [{ input, leads: [made] }] }).sentence);
    await expect(status).toContainText(`red is on pin ${pins[0]}`);
    await part.getByRole('button', { name: 'Take the wires off' }).press('Enter');
    await expect(status).toHaveText('Next: the red wire, meant for pin 4. Press its cup.');
  });
}

test('in soldering the bare end is made shorter with the arrow keys until it fits the cup', async ({
  page,
}) => {
  const part = await openPart(page, SOLDER, 3);
  const status = part.locator('.strip').getByRole('status');
  const slider = part.getByRole('slider', { name: /^Bare end of the core/ });
  for (const millimetres of [5, 4.5, 4, 3.5, 3, 2.5]) {
    await expect(slider).toHaveAttribute('aria-valuetext', `${millimetres.toFixed(1)} mm`);
    await expect(status).toHaveText(sayBareEnd(bareEnd(millimetres / 1e3)));
    await slider.press('ArrowLeft');
  }
  expect(bareEnd(CUP_METRES).fit).toBe('right');
});

test('in soldering one strand after the other is looked at with an arrow key', async ({ page }) => {
  const part = await openPart(page, SOLDER, 4);
  const status = part.locator('.ways').getByRole('status');
  await part.getByRole('radio', { name: 'strand from ring to sleeve' }).click();
  for (const name of ['strandOnRing', 'strandOnTip', 'coldJoint', 'right'] as const) {
    await expect(status).toHaveText(solve(toSolder[name]).sentence);
    await page.keyboard.press('ArrowRight');
  }
});

const PROVE = '/lessons/prove-it/';
test('in testing the fourth row finds by keyboard what three beeps had hidden', async ({ page }) => {
  const lead = firstLead(toProve.straight);
  const faults: readonly LeadFault[] = [{ kind: 'short', side: 'to', between: ['tip', 'ring'] }];
  const says = tableOf(madeLead(lead, faults));
  const [, , , fourth] = proofRows(lead);
  if (fourth === undefined) throw new Error('the lead to test: needs four rows, got fewer');
  const still = proofRows(lead)
    .filter(({ expects }) => expects === 'beep')
    .flatMap(({ places }) => places.filter(({ hold }) => hold === 'still'));
  const before = still.map((place) => ({ ...place, says: says(place) }));
  const after = [...before, ...fourth.places.map((place) => ({ ...place, says: says(place) }))];

  const part = await openPart(page, PROVE, 1);
  const status = part.locator('.test-lead').getByRole('status');
  await expect(status).toContainText(`3 of 8 rows read. ${proveLead(lead, before).sentence}`);
  await part.getByRole('button', { name: fourth.words }).press('Enter');
  await expect(status).toContainText(`4 of 8 rows read. ${proveLead(lead, after).sentence}`);
  await expect(status).toContainText('beeps to ring at the output end and ring at the input end');
  await part.getByRole('button', { name: 'Start again' }).press('Enter');
  await expect(status).toContainText(`3 of 8 rows read. ${proveLead(lead, before).sentence}`);
});

test('in testing one wire flickers with the plug at the input end moved, and the core names the joint', async ({
  page,
}) => {
  const part = await openPart(page, PROVE, 2);
  const status = part.locator('.test-lead').getByRole('status');
  const read = async (): Promise<void> => {
    for (const button of await part.getByRole('list', { name: 'Readings to take' }).getByRole('button').all())
      await button.press('Enter');
  };
  await part.getByRole('radio', { name: 'plug at the output end moved' }).press('Space');
  await expect(status).toContainText('0 of 3 rows read this way.');
  await read();
  await expect(status).toContainText('So far the lead is as planned');
  await part.getByRole('radio', { name: 'plug at the input end moved' }).press('Space');
  await read();
  const cold: LeadFault = { kind: 'cold-joint', side: 'to', conductor: 1 };
  await expect(status).toContainText(sayLeadFault(firstLead(toProve.straight), cold));
  await expect(part.getByRole('listitem').nth(1)).toContainText('flickers');
});

test('in testing each reading that is ticked leaves the explanations that the core finds', async ({
  page,
}) => {
  const lead = firstLead(toProve.fromDin);
  const part = await openPart(page, PROVE, 3);
  const status = part.locator('.tick-readings').getByRole('status');
  const sets = (second?: Beep): number =>
    proveLead(
      lead,
      readings.oneSilent.flatMap((one, at) => {
        const says = at === 1 ? second : one.says;
        return says === undefined ? [] : [{ ...placeFrom(lead, one), says }];
      }),
    ).sets.length;
  const wire = part.getByRole('group', { name: 'pin 5 at the output end to tip at the input end' });
  await expect(status).toContainText(`${sets()} single mistakes explain this`);
  await wire.getByRole('radio', { name: 'not read' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(status).toContainText(`${sets('silent')} single mistakes explain this`);
  await expect(status.getByRole('listitem')).toHaveCount(1);
  await page.keyboard.press('ArrowRight');
  await expect(status).toContainText(`${sets('beep')} single mistakes explain this`);
});

test('in testing a beep at the other plug does not tell where two wires touch', async ({ page }) => {
  const part = await openPart(page, PROVE, 4);
  const status = part.locator('.tick-readings').getByRole('status');
  const line =
    'pin 4 and pin 5 touch at the output end; or tip and ring touch at the input end (no reading can tell these apart)';
  await expect(status.getByRole('listitem')).toHaveText(line);
  const other = part.getByRole('group', { name: 'ring at the input end to tip at the input end' });
  await other.getByRole('radio', { name: 'beeps' }).press('Space');
  await expect(other.getByRole('radio', { name: 'beeps' })).toBeChecked();
  await expect(status.getByRole('listitem')).toHaveText(line);
});

const NOTHING = '/lessons/when-nothing-answers/';
/** A pile of the lesson of silence, and the same as the core weighs it. */
function pileNamed(name: keyof typeof piles) {
  const pile = pileFrom(piles[name]);
  const all = pile.suspects.map((_, at) => at);
  const weighed = {
    names: pile.suspects.map((one) => one.name),
    weights: all.map(() => 1),
    answers: pile.looks.map(({ seen }) => seen.map((one) => seen.indexOf(one))),
  };
  return { pile, all, weighed };
}

test('in the lesson of silence each look is tried by keyboard, and only the best is called so', async ({
  page,
}) => {
  const { pile, all, weighed } = pileNamed('six');
  const bits = pile.looks.map((_, at) => bitsOfObservation(weighed, all, at));
  const part = await openPart(page, NOTHING, 1);
  const status = part.locator('.split').getByRole('status');
  for (const [at, { words, seen }] of pile.looks.entries()) {
    await part.getByRole('button', { name: words }).press('Enter');
    const worst = Math.max(...seen.map((one) => seen.filter((other) => other === one).length));
    const best = bits[at] === Math.max(...bits);
    await expect(status).toHaveText(
      `At worst ${worst} of 6 are left. ${best ? 'No check' : 'Another check'} in this list tells more.`,
    );
    for (const answer of new Set(seen))
      await expect(
        part.getByRole('region', { name: `If it shows: ${answer}` }).getByRole('listitem'),
      ).toHaveText(pile.suspects.filter((_, one) => seen[one] === answer).map((one) => one.words));
  }
});

test('in the lesson of silence a symptom is chosen with an arrow key, and the core lists what it leaves', async ({
  page,
}) => {
  const part = await openPart(page, NOTHING, 2);
  const status = part.locator('.symptoms').getByRole('status');
  const groups = symptomGroups('link');
  await part.getByRole('radio', { name: groups[0]?.symptom ?? '' }).focus();
  for (const { suspects } of groups) {
    await expect(status.getByRole('listitem')).toHaveText(suspects.map(({ words }) => words));
    await page.keyboard.press('ArrowDown');
  }
});

for (const [number, name, first, second] of [
  [4, 'silent', 'pedal 1: wrong-channel', 'sender: outlet-set-wrong'],
  [5, 'chain', 'pedal 1: soft-thru-off', 'lead 2: mirrored'],
] as const) {
  test(`in the lesson of silence the hidden faults of part ${number} are hunted down by keyboard with the most telling looks`, async ({
    page,
  }) => {
    const { pile, all, weighed } = pileNamed(name);
    const part = await openPart(page, NOTHING, number);
    const status = part.locator('.split').getByRole('status');
    for (const culprit of [first, second]) {
      const hidden = weighed.names.indexOf(culprit);
      await expect(status).toHaveText(`${all.length} of ${all.length} suspects are left.`);
      let left: readonly number[] = all;
      let taken = 0;
      while (left.length > 1) {
        const bits = pile.looks.map((_, at) => bitsOfObservation(weighed, left, at));
        const look = pile.looks[bits.indexOf(Math.max(...bits))];
        if (look === undefined) throw new Error('the pile: needs a look that tells, got none');
        left = left.filter((at) => look.seen[at] === look.seen[hidden]);
        taken += 1;
        await part.getByRole('button', { name: look.words }).press('Enter');
        await expect(status).toContainText(`Seen: ${look.seen[hidden] ?? ''}.`);
        if (left.length > 1)
          await expect(status).toContainText(`${left.length} of ${all.length} suspects are left.`);
      }
      await expect(status).toContainText(`Found: ${pile.suspects[hidden]?.words ?? ''}.`);
      await expect(status).toContainText(
        `You needed ${taken === 1 ? '1 check' : `${taken} checks`}; the best way needs ${fewestExpected(weighed, all).toFixed(1)} on average`,
      );
      await expect(part.getByRole('list', { name: 'Suspects' }).getByText('(cleared)')).toHaveCount(
        all.length - 1,
      );
      await part.getByRole('button', { name: 'Hide another fault' }).press('Enter');
    }
  });
}
