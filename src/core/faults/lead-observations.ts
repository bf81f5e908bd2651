/** What a reader may look at, swap or measure at a lead of the fault bench and at the jack that it was in. */
import { meterProfile, readJack, readLead, setUp, takeReading } from '../readings/index.ts';
import type { LeadContact, Power, Reading } from '../readings/index.ts';
import { contactWords, familyOf, leadNode, linkCircuit, makeJack, styleEntry } from '../wiring/index.ts';
import type { Contact, Jack, Lead, Link, Side } from '../wiring/index.ts';
import { leadOf, relead } from './board-state.ts';
import type { BoardState } from './board-state.ts';
import { arrivals, symptomsOf } from './board-symptoms.ts';
import type { Observation } from './observation.ts';
import { atPlugs } from './plug-observations.ts';

const PROFILE = meterProfile('usual');

const READ = new WeakMap<object, Map<string, Reading>>();

/** A reading of a link, a lead or a jack that is taken once: most faults leave most of them as they were. */
function once(of: object, what: string, read: () => Reading): Reading {
  const known = READ.get(of) ?? new Map<string, Reading>();
  READ.set(of, known);
  const reading = known.get(what) ?? read();
  known.set(what, reading);
  return reading;
}

/** Everything that can be observed at a lead, by its place along the board. `good` is its link with nothing wrong. */
export function atLead(good: Link, at: number): readonly Observation[] {
  return [
    ...atPlugs(leadOf(good), at),
    swap(good, at),
    along(good, at, 'source'),
    along(good, at, 'sink'),
    lineOhms(good, at, 'source'),
    lineOhms(good, at, 'sink'),
    across(good, at),
    volts(good, at, 'idle'),
    volts(good, at, 'clock'),
    diode(good, at),
  ];
}

/** The lead itself: one that is not pushed home is sound. */
const leadAt = ({ links, loose }: BoardState, at: number, good: Link): Lead =>
  leadOf(loose[at] ? good : (links[at] as Link));

function swap(good: Link, at: number): Observation {
  const name = `lead ${at + 1}`;
  return {
    id: `swap ${name}`,
    words: `Swap ${name} for a tested lead and try again.`,
    effort: 2,
    place: name,
    spots: [],
    see: (state) => {
      const sound = <Value>(list: readonly Value[]): readonly (Value | undefined)[] =>
        list.map((one, place) => (place === at ? undefined : one));
      const before = { ...state, cold: sound(state.cold), loose: sound(state.loose) };
      // A link whose lead is sound stays the one that was solved.
      const healed =
        leadOf(state.links[at] as Link) === leadOf(good) ? before : relead(before, at, () => leadOf(good));
      return symptomsOf(healed).join() !== symptomsOf(state).join() ? 'it changes' : 'no change';
    },
  };
}

function lineOhms(good: Link, at: number, line: 'source' | 'sink'): Observation {
  const name = `lead ${at + 1}`;
  const { from, to } = goodLines(good)[line];
  return {
    id: `ohms ${line} ${name}`,
    words: `Unplug ${name} at both ends; ohms from ${contactWords(from)} to ${contactWords(to)}.`,
    effort: 3,
    place: name,
    spots: [`from ${from}`, `to ${to}`],
    see: (state) => {
      const lead = leadAt(state, at, good);
      const probes = [
        { side: 'from', contact: metal(lead, 'from', from) },
        { side: 'to', contact: metal(lead, 'to', to) },
      ] as const;
      return once(lead, `ohms ${line}`, () => readLead(lead, 'ohms', ...probes, PROFILE));
    },
  };
}

/** What continuity says between two places of a lead on the bench, each a side and the contact that should be there. */
function continuity(lead: Lead, red: LeadContact, black: LeadContact): 'beeps' | 'silent' {
  const probe = ({ side, contact }: LeadContact): LeadContact => ({
    side,
    contact: metal(lead, side, contact),
  });
  const reading = once(lead, `continuity ${JSON.stringify([red, black])}`, () =>
    readLead(lead, 'continuity', probe(red), probe(black), PROFILE),
  );
  return reading.shows === 'beep' ? 'beeps' : 'silent';
}

function along(good: Link, at: number, line: 'source' | 'sink'): Observation {
  const name = `lead ${at + 1}`;
  const { from, to } = goodLines(good)[line];
  return {
    id: `continuity ${line} ${name}`,
    words: `Unplug ${name} at both ends; continuity from ${contactWords(from)} to ${contactWords(to)}, then move the plugs.`,
    effort: 3,
    place: name,
    spots: [`from ${from}`, `to ${to}`],
    see: (state) => {
      const says = continuity(
        leadAt(state, at, good),
        { side: 'from', contact: from },
        { side: 'to', contact: to },
      );
      return says === 'beeps' && state.cold[at]?.line === line ? 'flickers' : says;
    },
  };
}

function across(good: Link, at: number): Observation {
  const name = `lead ${at + 1}`;
  const { source, sink } = goodLines(good);
  return {
    id: `continuity across ${name}`,
    words: `Unplug ${name} at both ends; continuity between ${contactWords(source.from)} and ${contactWords(sink.from)} of one plug.`,
    effort: 3,
    place: name,
    spots: [`from ${source.from}`, `from ${sink.from}`],
    see: (state) =>
      continuity(
        leadAt(state, at, good),
        { side: 'from', contact: source.from },
        { side: 'from', contact: sink.from },
      ),
  };
}

function diode(good: Link, at: number): Observation {
  const { source, sink } = goodLines(good);
  return {
    id: `diode pedal ${at + 1}`,
    words: `Pedal ${at + 1} off and unplugged: diode test of the jack that lead ${at + 1} was in, red on its source line, black on its sink line.`,
    effort: 3,
    place: `pedal ${at + 1}`,
    spots: ['jack'],
    see: (state) => {
      const { input } = (state.links[at] as Link).branches[0]!;
      const place = { meter: 'diode', power: 'off', red: source.to, black: sink.to } as const;
      return once(input, `diode ${state.inOut[at]} ${source.to} ${sink.to}`, () =>
        readJack({ kind: 'control', jack: state.inOut[at] ? outBeside(input) : input }, place, PROFILE),
      );
    },
  };
}

/** An output jack on the same connector: where a lead ends up that is put into OUT. */
function outBeside(input: Jack): Jack {
  return makeJack('out', input.connector, styleEntry(input.style).forOutput ? input.style : 'type-a');
}

/** Contacts of source and sink at both ends of a lead that is right. */
function goodLines(
  link: Link,
): Readonly<Record<'source' | 'sink', { readonly from: Contact; readonly to: Contact }>> {
  const at = (line: 'source' | 'sink'): { from: Contact; to: Contact } => ({
    from: styleEntry(link.output.style).lines[line] as Contact,
    to: styleEntry(link.branches[0]!.input.style).lines[line] as Contact,
  });
  return { source: at('source'), sink: at('sink') };
}

/** The metal of a plug where a contact should be: on a TS plug the long sleeve lies where a ring would. */
function metal(lead: Lead, side: Side, contact: Contact): Contact {
  return familyOf(lead[side].connector) === 'ts' && contact === 'ring' ? 'sleeve' : contact;
}

/** Volts between source and sink on the free plug of a lead, sender on; at rest from source to shield, with clock source to sink. */
function volts(good: Link, at: number, power: Exclude<Power, 'off'>): Observation {
  const input = good.branches[0]!.input;
  const { source, sink, shield } = styleEntry(input.style).lines as Record<
    'source' | 'sink' | 'shield',
    Contact
  >;
  const [red, black] = power === 'idle' ? [source, shield] : [source, sink];
  const name = `lead ${at + 1}`;
  return {
    id: `volts ${power} ${name}`,
    words: `DC volts on the free plug of ${name}, ${power === 'idle' ? 'nothing sent' : 'clock running'}: red on ${contactWords(red)}, black on ${contactWords(black)}.`,
    effort: 3,
    place: name,
    spots: [`to ${red}`, `to ${black}`],
    see: (state) => {
      // The free plug is out of its jack, whether or not it was pushed home.
      const link = state.loose[at] === 'to' ? good : (state.links[at] as Link);
      const [plus, minus] = [metal(leadOf(link), 'to', red), metal(leadOf(link), 'to', black)];
      if (plus === minus) return { meter: 'volts', shows: 'value', value: 0 };
      const on = at === 0 ? state.senderOn : state.pedalsOn[0] === true;
      const sends = at === 0 || (state.thruAlive && state.softThruOn && arrivals(state)[0] !== 'nothing');
      const placement = {
        meter: 'volts',
        power: on ? (sends ? power : 'idle') : 'off',
        red: leadNode(0, 0, 'to', plus),
        black: leadNode(0, 0, 'to', minus),
      } as const;
      return once(link, `volts ${JSON.stringify(placement)}`, () => {
        const { parts, switching } = linkCircuit(link, 'separate');
        // The touches of the free plug are left: nothing stands behind them any more.
        const alone = parts.filter(({ owner }) => owner.place !== 'input');
        return takeReading(setUp({ parts: alone, switching }, placement, PROFILE));
      });
    },
  };
}
