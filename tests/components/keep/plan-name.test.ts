import { expect, test } from 'vitest';
import PlanName from '../../../components/keep/PlanName.svelte';
import { allOf, htmlOf } from '../../support/rendered.ts';
import { plainPlan } from '../../core/plan/plans.ts';

const nothing = (): void => undefined;

test('A plan asks for its title and the number of the student, and shows those that it has', () => {
  const html = htmlOf(PlanName, {
    plan: { ...plainPlan(), title: 'First loop', student: 7 },
    label: 'Title of the board',
    onchange: nothing,
    onrefuse: nothing,
  });
  expect(allOf(html, 'label')).toEqual(['Title of the board', 'Your number in the class (0: none)']);
  expect(html).toMatch(/value="First loop"/);
  expect(html).toMatch(/value="7"/);
});
