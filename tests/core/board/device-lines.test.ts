import { describe, expect, test } from 'vitest';
import { readDeviceLines, sayDevice, sayLineProblem } from '../../../src/core/board/index.ts';
import {
  addDevice,
  makePlan,
  readPlanText,
  wholeDevice,
  writePlanText,
} from '../../../src/core/plan/index.ts';

/** The one line of a text in short: name, kind, channel, and each jack as 'NAME connector type role'. */
function short(text: string): string {
  const [line, ...others] = readDeviceLines(text);
  if (!line || others.length > 0) throw new Error(`test: needs one line, got ${others.length + 1}`);
  if (!line.ok) return sayLineProblem(line.line, line.problem);
  const { name, kind, channel, talks, jacks } = wholeDevice(line.device);
  const said = jacks.map(
    (jack) =>
      `${jack.name} ${jack.connector} ${jack.style}${jack.role === 'plain' ? '' : ` ${jack.role}`}${jack.styles.length > 0 ? ` (${jack.styles.join(' ')})` : ''}`,
  );
  return [name, kind, ...(channel ? [channel] : []), ...(talks === 'jacks' ? said : [talks])].join(' | ');
}

/** From plain to muddled; what each means was written down by hand. Phone sizes that are not told: 3.5 mm for types A and B, 6.35 mm else. */
const UNDERSTOOD: readonly (readonly [string, string])[] = [
  ['loop station: DIN in and thru', 'loop station | pedal | IN din5 din | THRU din5 din thru'],
  ['delay TRS-A in', 'delay | pedal | IN trs-3.5 type-a'],
  [
    'controller 2 x DIN out, TRS-B out 6.35',
    'controller | controller | OUT 1 din5 din | OUT 2 din5 din | OUT 3 trs-6.35 type-b',
  ],
  ['reverb: DIN in', 'reverb | pedal | IN din5 din'],
  ['reverb DIN IN', 'reverb | pedal | IN din5 din'],
  ['reverb: in DIN', 'reverb | pedal | IN din5 din'],
  ['reverb in DIN', 'reverb | pedal | IN din5 din'],
  ['reverb: 5-pin in, 5 pin thru', 'reverb | pedal | IN din5 din | THRU din5 din thru'],
  ['reverb: MIDI DIN input and through', 'reverb | pedal | IN din5 din | THRU din5 din thru'],
  [
    'rack synth: DIN in, out and thru',
    'rack synth | instrument | IN din5 din | OUT din5 din | THRU din5 din thru',
  ],
  ['rack synth DIN in/out/thru', 'rack synth | instrument | IN din5 din | OUT din5 din | THRU din5 din thru'],
  ['old box: 7-pin in', 'old box | pedal | IN din7 din'],
  ['chorus: TRS type B in and thru', 'chorus | pedal | IN trs-3.5 type-b | THRU trs-3.5 type-b thru'],
  ['chorus: TRS Type-B in', 'chorus | pedal | IN trs-3.5 type-b'],
  ['drive: minijack type a in', 'drive | pedal | IN trs-3.5 type-a'],
  ['drive: 3,5 mm TRS A in', 'drive | pedal | IN trs-3.5 type-a'],
  ['drive: 2.5 TRS-A in', 'drive | pedal | IN trs-2.5 type-a'],
  ['phaser: 1/4" TRS signal on ring in', 'phaser | pedal | IN trs-6.35 ring-signal'],
  ['phaser: TRS tip in', 'phaser | pedal | IN trs-6.35 tip-signal'],
  ['phaser: TRS ring-active in', 'phaser | pedal | IN trs-6.35 ring-signal'],
  ['fuzz: TS tip in', 'fuzz | pedal | IN ts-6.35 tip-signal'],
  ['fuzz: TS two-contact in 3.5', 'fuzz | pedal | IN ts-3.5 two-contact'],
  [
    'tremolo: TRS in-and-out jack',
    'tremolo | pedal | CONTROL in trs-6.35 tip-signal | CONTROL out trs-6.35 ring-signal',
  ],
  [
    'hub: DIN in, 4 x TRS-A/B out',
    'hub | hub | IN din5 din | OUT 1 trs-3.5 type-a (type-a type-b) | OUT 2 trs-3.5 type-a (type-a type-b) | OUT 3 trs-3.5 type-a (type-a type-b) | OUT 4 trs-3.5 type-a (type-a type-b)',
  ],
  ['thru box DIN in, two DIN outs', 'thru box | hub | IN din5 din | OUT 1 din5 din | OUT 2 din5 din'],
  ['merger: 2 DIN ins and DIN out', 'merger | merger | IN 1 din5 din | IN 2 din5 din | OUT din5 din'],
  ['merger: DIN in x 2, DIN out', 'merger | merger | IN 1 din5 din | IN 2 din5 din | OUT din5 din'],
  ['looper: DIN in + DIN out/thru', 'looper | pedal | IN din5 din | OUT din5 din out-or-thru'],
  ['looper: DIN in, out or thru', 'looper | pedal | IN din5 din | OUT din5 din out-or-thru'],
  ['looper DIN in and TRS-A out', 'looper | pedal | IN din5 din | OUT trs-3.5 type-a'],
  ['looper: in DIN and out TRS-A', 'looper | pedal | IN din5 din | OUT trs-3.5 type-a'],
  ['my pad, channel 3: DIN in', 'my pad | pedal | 3 | IN din5 din'],
  ['my pad ch 12 DIN in', 'my pad | pedal | 12 | IN din5 din'],
  ['pedal of mine: DIN out', 'pedal of mine | controller | OUT din5 din'],
  ['spring reverb: USB only', 'spring reverb | pedal | usb-only'],
  ['keyboard: USB, DIN out', 'keyboard | instrument | OUT din5 din'],
  ['plug in reverb DIN in', 'plug in reverb | pedal | IN din5 din'],
  ['3. tape echo - DIN in and thru', 'tape echo | pedal | IN din5 din | THRU din5 din thru'],
  ['reverb: small jack in type A', 'reverb | pedal | IN trs-3.5 type-a'],
  ['reverb: small jack, 3.5 mm, in, type A', 'reverb | pedal | IN trs-3.5 type-a'],
  ['reverb small jack in type B', 'reverb | pedal | IN trs-3.5 type-b'],
  ['reverb: large jack, 6.35 mm (¼ inch) in, type A', 'reverb | pedal | IN trs-6.35 type-a'],
  ['reverb: large jack, TRS-A in', 'reverb | pedal | IN trs-6.35 type-a'],
  ['reverb: tiny jack, 2.5 mm, type A in', 'reverb | pedal | IN trs-2.5 type-a'],
  ['delay: round, five holes (DIN) in and thru', 'delay | pedal | IN din5 din | THRU din5 din thru'],
  ['delay: round in', 'delay | pedal | IN din5 din'],
  ['round robin: DIN in', 'round robin | pedal | IN din5 din'],
  ['chorus: 1/4 TRS in and thru, type B', 'chorus | pedal | IN trs-6.35 type-b | THRU trs-6.35 type-b thru'],
  ['chorus: TRS-B in, TRS out, type A', 'chorus | pedal | IN trs-3.5 type-b | OUT trs-3.5 type-a'],
  ['- tape echo: DIN  in  &  thru', 'tape echo | pedal | IN din5 din | THRU din5 din thru'],
];

/** What cannot be one device for certain: the word that is shown, and a word of what is asked. */
const ASKED: readonly (readonly [string, string, string])[] = [
  ['delay', '', "jacks after the name, such as 'delay: DIN in and thru'"],
  ['DIN in', 'DIN', 'a name before the jacks'],
  ['delay: in', 'in', "the jack it is: 'DIN in'"],
  ['delay: MIDI in', 'in', "the jack it is: 'DIN in'"],
  ['delay: TRS in', 'TRS', 'its type'],
  ['delay: 3.5 mm in', '3.5', 'its type'],
  ['delay: TRS-C in', 'TRS-C', 'a jack: DIN, or TRS with its type'],
  ['delay: DIN', '', "in, out or thru beside 'DIN'"],
  ['delay: DIN in, type B', '', "in, out or thru beside 'type B'"],
  ['delay: TRS type A, DIN out', '', "in, out or thru beside 'TRS type A'"],
  ['delay: small jack', '', "in, out or thru beside 'small jack'"],
  ['delay: small jack in', 'small jack', 'its type'],
  ['delay: 1/4 trs in', 'trs', 'its type'],
  ['delay: DIN in, purple', 'purple', 'a jack: DIN, or TRS with its type'],
  ['delay: DIN type A in', 'Type A', 'a type beside TRS only'],
  ['delay: TS type A in', 'Type A', 'a type that a 3.5 mm TS in can have'],
  ['delay: DIN in-and-out jack', 'in-and-out', 'TRS beside an in-and-out jack'],
  ['delay: 2 x DIN in and out', 'out', 'a comma and a number for each'],
  ['delay: 40 x DIN out', '40', 'at most 32 jacks on a device'],
  ['delay: 20 x DIN in, 20 x DIN out', '20 x DIN in, 20 x DIN out', 'at most 32 jacks, and these are 40'],
  ['delay channel 17: DIN in', 'channel 17', 'a channel from 1 to 16'],
  [`${'d'.repeat(81)}: DIN in`, 'd'.repeat(81), 'a name of at most 80 characters'],
];

describe('Devices a line', () => {
  test.each(UNDERSTOOD)('%s', (text, means) => {
    expect(short(text)).toBe(means);
  });

  test.each(ASKED)('asks what is open: %s', (text, word, expected) => {
    const said = short(text);
    expect(said).toContain(word === '' ? 'Line 1: expected' : `Line 1, at '${word}': expected`);
    expect(said).toContain(expected);
  });

  test('a list keeps its good lines beside the bad ones, each with its number in the text', () => {
    const lines = readDeviceLines('delay: DIN in\n\nfuzz: TRS in\r\n  drive: TRS-B in  \n');
    expect(lines.map(({ line, ok, text }) => [line, ok, text])).toEqual([
      [1, true, 'delay: DIN in'],
      [3, false, 'fuzz: TRS in'],
      [4, true, 'drive: TRS-B in'],
    ]);
  });

  test('what is read stands on a board, is saved and opens again, whatever it is', () => {
    let plan = makePlan({});
    for (const line of readDeviceLines(UNDERSTOOD.map(([text]) => text).join('\n'))) {
      if (!line.ok) continue;
      const edit = addDevice(plan, line.device);
      if (!edit.ok) throw new Error(edit.problem.place);
      plan = edit.plan;
    }
    const reading = readPlanText(writePlanText(plan));
    expect(reading.ok && reading.plan).toEqual(plan);
  });

  test('a device is read back in words with the size and type that were taken for it', () => {
    const [line] = readDeviceLines('hub 2: TRS-A/B out, TRS ring in, channel 4');
    expect(line?.ok && sayDevice(line.device)).toBe(
      'hub 2, hub: OUT on 3.5 mm TRS, Type A or Type B; IN on 6.35 mm TRS, signal on ring, to ground',
    );
  });
});
