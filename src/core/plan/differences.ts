/** Where a student's plan departs from the teacher's in what was given: the jacks, their circuits, and the links asked for. */
import { findJack } from './parts.ts';
import type { JackPlace, Plan, PlanJack } from './plan.ts';
import { wholeJack } from './whole.ts';

/** Every difference in jacks, circuits and links, in words; the leads are the student's own and are not compared. */
export function differences(teacher: Plan, student: Plan): readonly string[] {
  const found: string[] = [];
  for (const device of teacher.devices) {
    for (const jack of device.jacks) {
      const place = { device: device.name, jack: jack.name };
      const other = findJack(student, place);
      if (!other) found.push(`${sayPlace(place)} is missing`);
      else found.push(...jackDifferences(place, jack, other));
    }
  }
  for (const link of teacher.links) {
    const wanted = linkKey(link.output, link.inputs);
    if (!student.links.some((one) => linkKey(one.output, one.inputs) === wanted)) {
      found.push(
        `link '${link.name}' from ${sayPlace(link.output)} to ${link.inputs.map(sayPlace).join(' and ')} is missing`,
      );
    }
  }
  return found;
}

const COMPARED = ['direction', 'connector', 'style', 'circuit', 'part'] as const;

/** Fields of a jack that may be left out, and change what happens in it or at it. */
const COMPARED_WHOLE = ['role', 'thru', 'latencySeconds', 'supplyOnSpares', 'sharesHole'] as const;

function jackDifferences(place: JackPlace, teacher: PlanJack, student: PlanJack): readonly string[] {
  const found = COMPARED.filter((field) => teacher[field] !== student[field]).map(
    (field) => `${sayPlace(place)}: ${field} must be '${teacher[field]}', got '${student[field]}'`,
  );
  const [given, taken] = [wholeJack(teacher), wholeJack(student)];
  for (const field of COMPARED_WHOLE)
    if (given[field] !== taken[field])
      found.push(`${sayPlace(place)}: ${field} must be '${given[field]}', got '${taken[field]}'`);
  for (const name of new Set([...Object.keys(teacher.values), ...Object.keys(student.values)]) as Set<
    keyof PlanJack['values']
  >) {
    const wanted = teacher.values[name];
    const got = student.values[name];
    if (wanted !== got)
      found.push(
        `${sayPlace(place)}: ${name} must be ${wanted ?? 'the default'}, got ${got ?? 'the default'}`,
      );
  }
  const [wanted, got] = [teacher, student].map(({ extras = [] }) => [...extras].sort().join(', ') || 'none');
  if (wanted !== got) found.push(`${sayPlace(place)}: extras must be ${wanted}, got ${got}`);
  return found;
}

function sayPlace({ device, jack }: JackPlace): string {
  return `jack '${jack}' of '${device}'`;
}

function linkKey(output: JackPlace, inputs: readonly JackPlace[]): string {
  const key = ({ device, jack }: JackPlace): string => JSON.stringify([device, jack]);
  return JSON.stringify([key(output), inputs.map(key).sort()]);
}
