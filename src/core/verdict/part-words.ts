/** A part of a link, in words. */
import type { LinkPart } from '../wiring/build.ts';
import { sayOhms } from './speak.ts';

/** 'the 220 ohm source resistor', 'the protection diode'. */
export function partWords(part: LinkPart): string {
  const { element, role, owner } = part;
  const ohms = element.kind === 'resistor' ? `${sayOhms(element.ohms)} ` : '';
  const of = owner.place === 'input' ? ' of the input' : owner.place === 'output' ? ' of the output' : '';
  switch (role) {
    case 'supply':
      return `the ${element.kind === 'voltage' ? element.volts : ''} V supply${of}`;
    case 'rail':
      return `the ${ohms}load on the dead supply rail`;
    case 'source-resistor':
      return `the ${ohms}source resistor`;
    case 'sink-resistor':
      return `the ${ohms}sink resistor`;
    case 'stage-resistor':
      return `the ${ohms}of the output stage`;
    case 'stage-high':
      return 'the output stage, switched high';
    case 'stage-low':
      return 'the output stage, switched low';
    case 'clamp':
      return `a clamp diode${of}`;
    case 'series-resistor':
      return `the ${ohms}resistor${of}`;
    case 'led':
      return 'the LED of the optocoupler';
    case 'protection':
      return 'the protection diode';
    case 'bridge-diode':
      return 'a diode of the bridge';
    case 'pull-up':
      return `the ${ohms}pull-up`;
    case 'input-resistor':
      return `the ${ohms}input resistor`;
    case 'contact':
      return 'a contact';
    case 'conductor':
      return 'a conductor';
    case 'joint':
      return `a joint of ${ohms.trim()}`;
    case 'short':
      return 'a solder bridge';
    case 'grounds':
      return 'the ground';
  }
}
