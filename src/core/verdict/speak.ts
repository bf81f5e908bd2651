/** Numbers and places in words: the same on the page, for a screen reader and on the command line. */
import { contactWords, lineAt } from '../wiring/index.ts';
import type { Contact, Fault, Jack, Lead } from '../wiring/index.ts';

/** A number with a real minus sign and no needless digits. */
function plain(value: number, digits: number): string {
  const text = value.toFixed(digits);
  return Number(text) === 0 ? (0).toFixed(digits) : text.replace('-', '−');
}

/** Currents below this are told as none, milliamperes (our choice: a thousandth of the loop's own), and in a table below half of its last digit. */
const ALMOST_NONE = 0.005;
const NONE_FINELY = 0.0005;

/** A current in milliamperes with the two digits that matter: '5.4 mA', '23 mA', '0.08 mA', and '0 mA' when there is almost none. */
export function sayAmperes(amperes: number): string {
  const milli = amperes * 1e3;
  if (Math.abs(milli) < ALMOST_NONE) return '0 mA';
  return `${String(Number(milli.toPrecision(2))).replace('-', '−')} mA`;
}

/** A current to its last digit that means something, for tables and worked sums: '5.38 mA'. */
export function sayAmperesFinely(amperes: number): string {
  const milli = amperes * 1e3;
  if (Math.abs(milli) < NONE_FINELY) return '0 mA';
  return `${plain(milli, Math.abs(milli) >= 20 ? 1 : Math.abs(milli) < 0.1 ? 3 : 2)} mA`;
}

/** How to say currents that stand beside bounds: with two digits, or finely where two digits would make a current and a bound read alike. */
export function sayBeside(amperes: readonly number[], bounds: readonly number[]): (one: number) => string {
  const alike = amperes.some((one) =>
    bounds.some((bound) => one !== bound && sayAmperes(one) === sayAmperes(bound)),
  );
  return alike ? sayAmperesFinely : sayAmperes;
}

/** A voltage: '1.45 V'. */
export function sayVolts(volts: number): string {
  return `${plain(volts, 2)} V`;
}

/** A power: '0.11 W', or milliwatts when small. */
export function sayWatts(watts: number): string {
  return watts < 0.1 ? `${plain(watts * 1e3, watts < 0.01 ? 2 : 1)} mW` : `${plain(watts, 2)} W`;
}

/** A resistance: '220 ohm', '10 kohm'. */
export function sayOhms(ohms: number): string {
  return ohms >= 1e3 ? `${Number((ohms / 1e3).toPrecision(3))} kohm` : `${Number(ohms.toPrecision(3))} ohm`;
}

/** A contact with the line it carries: 'pin 4 (source)'. */
export function sayContact(jack: Jack, spot: { readonly contact: Contact }): string {
  const line = lineAt(jack.style, spot.contact);
  return line === undefined ? contactWords(spot.contact) : `${contactWords(spot.contact)} (${line})`;
}

/** Words as a sentence begins: the first letter a capital. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Join words: 'a', 'a and b', 'a, b and c'. */
export function sayList(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1] ?? ''}`;
}

/** 'Output' or 'input', with a number when there are several inputs. */
export function sayInput(branch: number, inputs: number): string {
  return inputs > 1 ? `input ${branch + 1}` : 'the input';
}

/** A fault of a lead: 'the joint at pin 4, output end, is open'. `from` is the end nearer the output. */
export function sayFault(lead: Lead, fault: Fault): string {
  const end = fault.side === 'from' ? 'output end' : 'input end';
  const where = lead.name === 'lead' ? end : `${end} of '${lead.name}'`;
  switch (fault.kind) {
    case 'open':
      return `the joint at ${contactWords(fault.contact)}, ${where}, is open`;
    case 'joint':
      return `the joint at ${contactWords(fault.contact)}, ${where}, has ${sayOhms(fault.ohms)}`;
    case 'short':
      return `${sayList(fault.between.map(contactWords))} touch at the ${where}`;
  }
}
