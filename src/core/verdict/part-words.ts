/** A part of a link, in words. */
import type { LinkPart } from '../wiring/index.ts';
import { sayInput, sayOhms } from './speak.ts';

/** 'the 220 ohm source resistor', 'the protection diode'; `inputs` is the number of inputs of the link. */
export function partWords(part: LinkPart, inputs: number): string {
  return `${partName(part)}${placeOf(part, inputs)}`;
}

/** Parts that are named without their place where the output and the input each have one of the kind. */
const TWICE: readonly LinkPart['role'][] = ['supply', 'clamp', 'series-resistor', 'grounds'];

function placeOf({ owner, role }: LinkPart, inputs: number): string {
  if (owner.place === 'input' && (inputs > 1 || TWICE.includes(role)))
    return ` of ${sayInput(owner.branch, inputs)}`;
  return owner.place === 'output' && TWICE.includes(role) ? ' of the output' : '';
}

/** As `partWords`, but without the place: for a step that has named it already. */
export function partName(part: LinkPart): string {
  const { element, role } = part;
  const ohms = element.kind === 'resistor' ? `${sayOhms(element.ohms)} ` : '';
  switch (role) {
    case 'supply':
      return `the ${element.kind === 'voltage' ? element.volts : ''} V supply`;
    case 'rail':
      return `the ${ohms}load on the dead supply rail`;
    case 'source-resistor':
      return `the ${ohms}source resistor`;
    case 'sink-resistor':
      return `the ${ohms}sink resistor`;
    case 'stage-resistor':
      return `the ${ohms}of the output stage`;
    case 'stage-high':
      return 'the output stage (switched high)';
    case 'stage-low':
      return 'the output stage (switched low)';
    case 'stage-drive':
      return 'the output stage';
    case 'capacitance':
      return 'the capacitance between two wires';
    case 'clamp':
      return 'a clamp diode';
    case 'series-resistor':
      return `the ${ohms}resistor`;
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
