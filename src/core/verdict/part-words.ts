/** A part of a link, in words. */
import type { LinkPart, Role } from '../wiring/index.ts';
import { sayInput, sayOhms } from './speak.ts';

/** What a part is called; '#' stands for its resistance or voltage. */
const NAMES: Readonly<Record<Role, string>> = {
  supply: 'the # supply',
  rail: 'the # load on the dead supply rail',
  'source-resistor': 'the # source resistor',
  'sink-resistor': 'the # sink resistor',
  'stage-resistor': 'the # of the output stage',
  'stage-high': 'the output stage (switched high)',
  'stage-low': 'the output stage (switched low)',
  'stage-drive': 'the output stage',
  capacitance: 'the capacitance between two wires',
  clamp: 'a clamp diode',
  'series-resistor': 'the # resistor',
  led: 'the LED of the optocoupler',
  protection: 'the protection diode',
  'turned-diode': 'the protection diode, which is turned',
  'second-resistor': 'the # resistor of the second input',
  'second-led': 'the LED of the second input',
  'second-protection': 'the protection diode of the second input',
  'bridge-diode': 'a diode of the bridge',
  tap: 'the # load on the source line',
  'activity-resistor': 'the resistor of the activity LED',
  'activity-led': 'the activity LED',
  'foreign-supply': 'the foreign supply of #',
  'foreign-resistor': 'the # of the foreign supply',
  'pull-up': 'the # pull-up',
  'input-resistor': 'the # input resistor',
  contact: 'a contact',
  conductor: 'a conductor',
  joint: 'a joint of #',
  short: 'a solder bridge',
  grounds: 'the ground',
};

/** Parts that are named without their place where the output and the input each have one of the kind. */
const TWICE: readonly Role[] = ['supply', 'clamp', 'series-resistor', 'grounds'];

/** 'the 220 ohm source resistor', 'the protection diode'; `inputs` is the number of inputs of the link. */
export function partWords(part: LinkPart, inputs: number): string {
  const { owner, role } = part;
  if (owner.place === 'input' && (inputs > 1 || TWICE.includes(role)))
    return `${partName(part)} of ${sayInput(owner.branch, inputs)}`;
  if (owner.place === 'output' && owner.rival !== undefined)
    return `${partName(part)} of output ${owner.rival}`;
  return owner.place === 'output' && TWICE.includes(role)
    ? `${partName(part)} of the output`
    : partName(part);
}

/** As `partWords`, but without the place: for a step that has named it already. */
export function partName({ element, role }: LinkPart): string {
  const value =
    element.kind === 'resistor'
      ? sayOhms(element.ohms)
      : element.kind === 'voltage'
        ? `${element.volts} V`
        : '';
  return NAMES[role].replace('#', value);
}
