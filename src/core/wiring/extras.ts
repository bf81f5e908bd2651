/** What else may be inside a jack that no standard draws: a closed set, each with the jacks that it suits, and in words. */
import type { CircuitKind } from './circuits.ts';
import { circuitEntry } from './circuits.ts';
import type { Connector, Contact } from './connectors.ts';
import { contactWords, familyOf } from './connectors.ts';
import type { Line, Style } from './styles.ts';
import { styleEntry } from './styles.ts';

/** Every such thing. Links count on the order. */
export const EXTRAS = [
  'activity-in-series',
  'second-in-series',
  'no-diode',
  'turned-diode',
  'rectifier-diode',
  'schottky-diode',
  'shield-tied',
  'crossed-inside',
  'shield-untied',
] as const;
/** Something inside a jack that no standard draws. */
export type Extra = (typeof EXTRAS)[number];

/** What of a jack decides which extras suit it. */
interface Inside {
  readonly circuit: CircuitKind;
  readonly connector: Connector;
  readonly style: Style;
  readonly extras?: readonly Extra[];
}

/** An extra in words: `label` to choose it by, `means` for a note, `mend` what takes it away, `about` which place it takes. */
interface ExtraEntry {
  readonly label: string;
  readonly means: string;
  readonly mend: string;
  readonly about: 'loop' | 'diode' | 'shield' | 'contacts';
}

const ENTRIES: Readonly<Record<Extra, ExtraEntry>> = {
  'activity-in-series': {
    label: 'an activity LED in series with the loop',
    means: 'an activity LED in series takes its voltage from the loop',
    mend: 'take the activity LED out of the loop',
    about: 'loop',
  },
  'second-in-series': {
    label: "a second input's resistor and LED in series",
    means: 'a second input in series: the same current lights two LEDs and passes two resistors',
    mend: 'take the second input out of the loop',
    about: 'loop',
  },
  'no-diode': {
    label: 'left out',
    means: 'no protection diode: with the lines exchanged its LED takes the whole voltage in reverse',
    mend: 'fit the protection diode',
    about: 'diode',
  },
  'turned-diode': {
    label: 'fitted the wrong way round',
    means: 'the protection diode is turned: it takes the current past the LED',
    mend: 'turn the protection diode round',
    about: 'diode',
  },
  'rectifier-diode': {
    label: 'a rectifier, such as 1N4007',
    means: 'a rectifier as protection diode: slow, but the LED does not mind',
    mend: 'fit a 1N914 or 1N4148 as protection diode',
    about: 'diode',
  },
  'schottky-diode': {
    label: 'a Schottky diode, such as BAT85',
    means: 'a Schottky diode as protection diode: about 0.4 V instead of 0.7 V in reverse',
    mend: 'fit a 1N914 or 1N4148 as protection diode',
    about: 'diode',
  },
  'shield-tied': {
    label: "the shield contact tied to this device's ground",
    means: 'the lead joins the grounds of both devices, and audio may hum; the standard leaves it open here',
    mend: 'part the shield contact from ground',
    about: 'shield',
  },
  'crossed-inside': {
    label: 'two contacts exchanged inside',
    means: 'the jack is wired otherwise inside than its type says',
    mend: 'exchange them back',
    about: 'contacts',
  },
  'shield-untied': {
    label: 'the shield contact tied to nothing inside',
    means: 'the shield of the lead ends in the air here, and a meter or a tester finds no ground on it',
    mend: 'tie the shield contact to ground',
    about: 'shield',
  },
};

/** What is known of an extra. */
export function extraEntry(extra: Extra): ExtraEntry {
  return ENTRIES[extra];
}

/** The contacts that a jack exchanged inside has in each other's place: pins 4 and 5, or ring and sleeve; none where it has neither. */
export function exchangedContacts(connector: Connector): readonly [Contact, Contact] | undefined {
  const family = familyOf(connector);
  if (family === 'din') return ['4', '5'];
  return family === 'trs' ? ['ring', 'sleeve'] : undefined;
}

/** Whether an extra can be inside a jack. */
export function extraSuits(extra: Extra, { circuit, connector, style }: Inside): boolean {
  const isolated = circuit === 'receiver-isolated';
  switch (ENTRIES[extra].about) {
    case 'diode':
      return isolated;
    case 'loop':
      return extra === 'second-in-series' ? isolated : circuitEntry(circuit).family === 'loop';
    case 'shield': {
      const input = isolated || circuit === 'receiver-both-ways';
      const output = !input && circuitEntry(circuit).family === 'loop';
      return (extra === 'shield-tied' ? input : output) && styleEntry(style).lines.shield !== undefined;
    }
    case 'contacts':
      return exchangedContacts(connector) !== undefined;
  }
}

/** The extras of a jack with one more, or without it; there is one diode at most. */
export function withExtra(extras: readonly Extra[], extra: Extra, there: boolean): readonly Extra[] {
  const others = extras.filter(
    (one) => one !== extra && !(ENTRIES[extra].about === 'diode' && ENTRIES[one].about === 'diode'),
  );
  return there ? [...others, extra] : others;
}

/** An extra to choose it by, with the contacts of the jack in its words. */
export function sayExtra(extra: Extra, { connector, style }: Inside): string {
  const { label } = ENTRIES[extra];
  const { shield } = styleEntry(style).lines;
  const pair = exchangedContacts(connector) ?? [];
  return label
    .replace('two contacts', pair.map(contactWords).join(' and '))
    .replace('the shield contact', shield === undefined ? 'the shield contact' : contactWords(shield));
}

/** The label of a value with the contacts of the jack in place of its lines: 'load from pin 4 to ground'. */
export function sayOnContacts(label: string, jack: Inside): string {
  const { source, sink } = linesInside(jack);
  return label
    .replace('source line', source === undefined ? 'source line' : contactWords(source))
    .replace('sink line', sink === undefined ? 'sink line' : contactWords(sink));
}

/** A message for the first extra of a jack that cannot be, or undefined. */
export function extraProblem(jack: Inside): string | undefined {
  const extras = jack.extras ?? [];
  const diodes = extras.filter((one) => ENTRIES[one].about === 'diode');
  if (new Set(extras).size < extras.length)
    return `extras: each must be there once, got ${extras.join(', ')}`;
  if (diodes.length > 1) return `extras: must have one diode at most, got ${diodes.join(', ')}`;
  const odd = extras.find((one) => !extraSuits(one, jack));
  return odd && `extras: '${odd}' does not suit a ${jack.connector} jack with circuit '${jack.circuit}'`;
}

/** The extra of a jack that is about its diode; undefined for the usual one. */
export function diodeOf({ extras = [] }: { readonly extras?: readonly Extra[] }): Extra | undefined {
  return extras.find((one) => ENTRIES[one].about === 'diode');
}

/** Whether a jack has an extra. */
export function hasExtra({ extras }: { readonly extras?: readonly Extra[] }, extra: Extra): boolean {
  return extras?.includes(extra) === true;
}

/** The contact of each line as the jack is wired inside. */
export function linesInside(jack: Inside): Readonly<Partial<Record<Line, Contact>>> {
  const { lines } = styleEntry(jack.style);
  const pair = hasExtra(jack, 'crossed-inside') ? exchangedContacts(jack.connector) : undefined;
  if (!pair) return lines;
  const [one, other] = pair;
  return Object.fromEntries(
    Object.entries(lines).map(([line, contact]) => [
      line,
      contact === one ? other : contact === other ? one : contact,
    ]),
  );
}
