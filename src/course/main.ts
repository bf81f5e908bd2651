/** The script of a course package: reads the Set that stands in its page, and plays it. */
import { mount } from 'svelte';
import { readSet } from '../core/class/index.ts';
import { sayProblem } from '../core/plan/index.ts';
import '../styles/tokens.css';
import '../styles/base.css';
import '../styles/page.css';
import '../styles/parts.css';
import '../styles/papers.css';
import '../styles/blocks.css';
import '../styles/forms.css';
import '../styles/figures.css';
import '../styles/print.css';
import CoursePlayer from '../../components/course/CoursePlayer.svelte';
import { findApi, startCourse } from '../../components/course/run-time.ts';
import type { Frame } from '../../components/course/run-time.ts';

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
