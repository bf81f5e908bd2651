/** A board that a learner reasons about by hand: what each suspect stops, and what each check then shows. It solves no circuit. */

/** A suspect as a task words it, taken apart: 'lead 1', and what is wrong with it. */
interface Fault {
  readonly place: string;
  readonly wrong: string;
}

function faultOf(words: string): Fault {
  const [, place = '', wrong = ''] = /^(sender|lead \d|pedal \d): (.+)$/.exec(words) ?? [];
  return { place, wrong };
}

/** Faults of a lead that let no byte through, and those that only do so at times. */
const DEAD_LEAD = /open|touch|swapped|mirrored|TS lead/;
const is = (fault: Fault, place: string, wrong: RegExp): boolean =>
  fault.place === place && wrong.test(fault.wrong);

/** Whether bytes reach a pedal: all that stands before it has to be in order. */
function arrives(fault: Fault, pedal: number): 'arrives' | 'nothing' | 'comes and goes' {
  const stops =
    is(fault, 'sender', /supply|wrong type/) ||
    Array.from({ length: pedal }, (_, at) => `lead ${at + 1}`).some((lead) => is(fault, lead, DEAD_LEAD)) ||
    Array.from({ length: pedal }, (_, at) => `pedal ${at + 1}`).some((one) =>
      is(fault, one, /OUT|supply|Type B/),
    ) ||
    (pedal === 2 && is(fault, 'pedal 1', /THRU/));
  const shaky = Array.from({ length: pedal }, (_, at) => `lead ${at + 1}`).some((lead) =>
    is(fault, lead, /cold/),
  );
  return stops ? 'nothing' : shaky ? 'comes and goes' : 'arrives';
}

/** What a player sees at a pedal with this one thing wrong. */
export function seenAtPedal(
  words: string,
  pedal: number,
): 'nothing' | 'comes and goes' | 'beside' | 'bank' | 'right' {
  const fault = faultOf(words);
  const arrival = arrives(fault, pedal);
  if (
    arrival === 'nothing' ||
    is(fault, `pedal ${pedal}`, /channel|listen/) ||
    is(fault, 'sender', /filters/)
  )
    return 'nothing';
  if (arrival === 'comes and goes') return 'comes and goes';
  if (is(fault, 'sender', /counts/)) return 'beside';
  return is(fault, 'sender', /no bank/) ? 'bank' : 'right';
}

/** What a check shows with one thing wrong, both as worded; volts by their sign alone. */
export function shownBy(check: string, words: string): string {
  const fault = faultOf(words);
  const place = /(?:pedal|lead) \d/.exec(check)?.[0] ?? 'sender';
  const either = (bad: boolean, then: string, otherwise: string): string => (bad ? then : otherwise);
  if (/activity light/.test(check))
    return { arrives: 'blinks', nothing: 'stays dark', 'comes and goes': 'comes and goes' }[
      arrives(fault, Number(place.slice(-1)))
    ];
  if (/^Swap/.test(check)) return either(fault.place === place, 'it changes', 'no change');
  if (/lamp/.test(check)) return either(is(fault, place, /supply/), 'dark', 'lit');
  if (/switch of the output/.test(check))
    return either(is(fault, 'sender', /wrong type/), 'set to Type B', 'set to Type A');
  if (/send program changes/.test(check))
    return either(is(fault, 'sender', /filters/), 'filtered out', 'sent');
  if (/bank/.test(check)) return either(is(fault, 'sender', /no bank/), 'no bank', 'bank sent');
  if (/THRU on/.test(check)) return either(is(fault, 'pedal 1', /software THRU/), 'off', 'on');
  if (/which jack/.test(check)) return either(is(fault, place, /OUT/), 'in the OUT', 'in the IN');
  if (/channel/.test(check)) return either(is(fault, place, /channel/), 'different', 'the same');
  if (/listen/.test(check)) return either(is(fault, place, /not to listen/), 'no', 'yes');
  if (/phone plugs/.test(check))
    return either(is(fault, place, /TS lead/), 'one ring: a TS plug', 'two rings on each');
  if (/continuity between/.test(check)) return either(is(fault, place, /touch/), 'beeps', 'silent');
  if (/^DC volts/.test(check)) {
    if (is(fault, 'lead 1', /open|touch|TS lead/) || is(fault, 'sender', /supply/)) return 'none';
    return either(
      is(fault, 'lead 1', /swapped|mirrored/) || is(fault, 'sender', /wrong type/),
      'minus',
      'plus',
    );
  }
  throw new Error(`board: needs a check that is known, got '${check}'`);
}

/** A reading in a task as the board above tells it. */
export function asTold(seen: string): string {
  const volts = /^([−-]?)([\d.]+) m?V$/.exec(seen);
  if (!volts) return seen;
  return Number(volts[2]) === 0 ? 'none' : volts[1] ? 'minus' : 'plus';
}
