/** The script of a course package: reads the Set that stands in its page, and plays it. */
import { mount } from 'svelte';
import { readSet } from '../../src/core/class/index.ts';
import { sayProblem } from '../../src/core/plan/index.ts';
import '../../src/styles/tokens.css';
import '../../src/styles/base.css';
import '../../src/styles/page.css';
import '../../src/styles/parts.css';
import '../../src/styles/papers.css';
import '../../src/styles/blocks.css';
import '../../src/styles/forms.css';
import '../../src/styles/figures.css';
import CoursePlayer from './CoursePlayer.svelte';
import { findApi, startCourse } from './run-time.ts';
import type { Frame } from './run-time.ts';

const target = document.querySelector('main');
const given = JSON.parse(document.querySelector('#work')?.textContent ?? '{}') as {
  set?: unknown;
  pass?: unknown;
};
const reading = readSet(given.set);
if (!target) throw new Error('course: needs a page with a main part, got none');
if (reading.ok) {
  const api = findApi(window as unknown as Frame);
  const course = api && startCourse(api, () => performance.now());
  mount(CoursePlayer, { target, props: { set: reading.value, pass: Number(given.pass), course } });
} else target.textContent = `This work cannot be opened: ${reading.problems.map(sayProblem).join('; ')}.`;
