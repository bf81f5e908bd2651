/** From a solved link of one output, one lead and one isolated input to its circuit diagram. */
import { contactWords, styleEntry, valueAt } from '../core/wiring/index.ts';
import { sayOhms } from '../core/verdict/index.ts';
import type { Jack, Line, Link, Role, State } from '../core/wiring/index.ts';
import type { LinkVerdict } from '../core/verdict/index.ts';
import { SCHEMATIC_DRIVERS } from './schematic.ts';
import type { SchematicDriver, SchematicInput } from './schematic.ts';

/** What the circuit diagram of a link shows in one state, `width` in pixels. @throws when the link is not one output of a drawn kind, one lead and one isolated input. */
export function loopDiagram(link: Link, verdict: LinkVerdict, state: State, width: number): SchematicInput {
  const { output } = link;
  const [branch, ...others] = link.branches;
  const lead = branch?.leads[0];
  const driver = SCHEMATIC_DRIVERS.find((kind: SchematicDriver) => kind === output.circuit);
  if (
    driver === undefined ||
    branch?.input.circuit !== 'receiver-isolated' ||
    lead === undefined ||
    branch.leads.length > 1 ||
    others.length > 0
  ) {
    throw new Error('loop diagram: needs a loop output, one lead and one isolated input');
  }
  const out = styleEntry(output.style).lines;
  const into = styleEntry(branch.input.style).lines;
  const joins = (from: Line, to: Line): boolean =>
    lead.conductors.some((one) => one.from === out[from] && one.to === into[to]);
  const crossed = joins('source', 'sink') || joins('sink', 'source');
  const ampere = (role: Role): number =>
    verdict.readings[state].parts.find(({ part }) => part.role === role)?.amperes ?? 0;
  return {
    width,
    driver,
    state,
    connected: {
      source: joins('source', crossed ? 'sink' : 'source'),
      sink: joins('sink', crossed ? 'source' : 'sink'),
      shield: joins('shield', 'shield'),
      crossed,
    },
    amperes: {
      source: ampere('source-resistor'),
      sink: ampere('sink-resistor'),
      // The core counts this one into the output.
      shield: -verdict.readings[state].shieldAmperes,
      led: ampere('led'),
      protection: ampere('protection'),
    },
    values: {
      supply: `${valueAt(output, 'supplyVolts')} V`,
      sourceResistor: sayOhms(valueAt(output, 'sourceOhms')),
      sinkResistor: sayOhms(valueAt(output, 'sinkOhms')),
      receiverResistor: sayOhms(valueAt(branch.input, 'seriesOhms')),
    },
    contacts: { driver: contactNames(output), receiver: contactNames(branch.input) },
  };
}

function contactNames(jack: Jack): Readonly<Record<'source' | 'sink' | 'shield', string>> {
  const name = (line: Line): string => {
    const contact = styleEntry(jack.style).lines[line];
    return contact === undefined ? 'none' : contactWords(contact);
  };
  return { source: name('source'), sink: name('sink'), shield: name('shield') };
}
