/**
 * The talk with a course system, by the run-time of SCORM 1.2: an object `API` up the parents of the window, or of the window that opened
 * it. Everything that is said is text; a refused call is told and changes nothing here.
 */

/** The functions of the run-time that are used. */
export interface Api {
  readonly LMSInitialize: (empty: '') => unknown;
  readonly LMSFinish: (empty: '') => unknown;
  readonly LMSGetValue: (name: string) => unknown;
  readonly LMSSetValue: (name: string, value: string) => unknown;
  readonly LMSCommit: (empty: '') => unknown;
  readonly LMSGetLastError: () => unknown;
}

/** A window as far as it is searched. */
export interface Frame {
  readonly API?: Api | null | undefined;
  readonly parent?: Frame | null | undefined;
  readonly opener?: Frame | null | undefined;
}

/** Windows that are searched upwards, so that frames in a ring end too. */
const MOST_PARENTS = 20;

/** What a course system knows, and how it is told. */
export interface Course {
  /** Why it did not begin; then nothing is kept. */
  readonly problem: string | undefined;
  readonly student: string;
  /** What was kept of an earlier visit; empty for the first. */
  readonly kept: string;
  /** Whether an earlier visit ended with all handed in. */
  readonly over: boolean;
  /** Keep the work and its score, 0 to 100; says what was refused. */
  readonly keep: (work: string, score: number) => string | undefined;
  /** All is handed in; says what was refused. */
  readonly finish: (passed: boolean) => string | undefined;
  /** The page is left: said once, however often it is called. */
  readonly leave: () => void;
}

/** The run-time of a course system, or undefined for a page that stands alone. */
export function findApi(start: Frame): Api | undefined {
  return upwards(start) ?? upwards(reach(() => start.opener));
}

function upwards(start: Frame | null | undefined): Api | undefined {
  let frame = start;
  for (let step = 0; frame && step < MOST_PARENTS; step++) {
    const here = frame;
    const api = reach(() => here.API);
    if (api) return api;
    const parent = reach(() => here.parent);
    if (parent === frame) return undefined;
    frame = parent;
  }
  return undefined;
}

/** What a window of another host does not let anyone see is not there. */
function reach<T>(look: () => T): T | undefined {
  try {
    return look();
  } catch {
    return undefined;
  }
}

/** Seconds as the run-time writes them: '0001:02:03'. */
function spanOf(seconds: number): string {
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0');
  return `${String(Math.floor(seconds / 3600)).padStart(4, '0')}:${two((seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/** What `lesson_status` is after all was handed in. */
const OVER = ['passed', 'failed', 'completed'];

/** Begin to talk with a course system; `now` gives milliseconds. */
export function startCourse(api: Api, now: () => number): Course {
  const started = now();
  let left = false;
  let ended = false;
  const asked = (name: string): string => String(reach(() => api.LMSGetValue(name)) ?? '');
  const works = (call: () => unknown): boolean => String(reach(call)) === 'true';
  const said = (pairs: readonly (readonly [string, string])[]): string | undefined => {
    const refused = pairs.filter(([name, value]) => !works(() => api.LMSSetValue(name, value)));
    const error = String(reach(() => api.LMSGetLastError()) ?? '');
    const committed = works(() => api.LMSCommit(''));
    if (refused.length === 0 && committed) return undefined;
    return `The course system did not keep your work (error ${error}${refused.length > 0 ? `, at ${refused.map(([name]) => name).join(', ')}` : ''}).`;
  };
  const begun = works(() => api.LMSInitialize(''));
  const status = begun ? asked('cmi.core.lesson_status') : '';
  const over = OVER.includes(status);
  if (begun && !over) works(() => api.LMSSetValue('cmi.core.lesson_status', 'incomplete'));
  return {
    problem: begun
      ? undefined
      : 'The course system did not begin. Your work is kept nowhere: save it as a file.',
    student: begun ? asked('cmi.core.student_id') : '',
    kept: begun ? asked('cmi.suspend_data') : '',
    over,
    keep: (work, score) =>
      begun && !left
        ? said([
            ['cmi.core.score.min', '0'],
            ['cmi.core.score.max', '100'],
            ['cmi.core.score.raw', String(Math.round(score))],
            ['cmi.suspend_data', work],
          ])
        : undefined,
    finish: (passed) => {
      ended = true;
      return begun && !left ? said([['cmi.core.lesson_status', passed ? 'passed' : 'failed']]) : undefined;
    },
    leave: () => {
      if (!begun || left) return;
      said([
        ['cmi.core.session_time', spanOf((now() - started) / 1000)],
        ['cmi.core.exit', ended || over ? '' : 'suspend'],
      ]);
      left = true;
      works(() => api.LMSFinish(''));
    },
  };
}
