/**
 * A course system's run-time that forgives nothing, after the SCORM 1.2 Run-Time Environment (2001): order of calls, names, who may read
 * and write, words, lengths, and text alone. The function stands by itself, so that a page can be given its source.
 */

/** What the run-time has kept of one student, and everything that it had to complain of. */
export interface StrictApi {
  readonly data: Record<string, string>;
  readonly faults: string[];
  readonly calls: string[];
  readonly LMSInitialize: (...given: readonly unknown[]) => string;
  readonly LMSFinish: (...given: readonly unknown[]) => string;
  readonly LMSGetValue: (...given: readonly unknown[]) => string;
  readonly LMSSetValue: (...given: readonly unknown[]) => string;
  readonly LMSCommit: (...given: readonly unknown[]) => string;
  readonly LMSGetLastError: () => string;
}

/** A run-time for one visit of a student; `data` is what was kept of the visits before. */
export function strictRunTime(data: Record<string, string>): StrictApi {
  const SPAN = /^\d{4}:[0-5]\d:[0-5]\d(\.\d{1,2})?$/;
  const SCORE = /^(100|\d{1,2})(\.\d+)?$/;
  const readable = [
    'student_id',
    'student_name',
    'lesson_status',
    'lesson_location',
    'entry',
    'credit',
    'score.raw',
  ];
  const writable: Record<string, (value: string) => boolean> = {
    'cmi.core.lesson_status': (value) =>
      ['passed', 'completed', 'failed', 'incomplete', 'browsed'].includes(value),
    'cmi.core.lesson_location': (value) => value.length <= 255,
    'cmi.core.score.raw': (value) => SCORE.test(value),
    'cmi.core.score.min': (value) => SCORE.test(value),
    'cmi.core.score.max': (value) => SCORE.test(value),
    'cmi.core.exit': (value) => ['time-out', 'suspend', 'logout', ''].includes(value),
    'cmi.core.session_time': (value) => SPAN.test(value),
    'cmi.suspend_data': (value) => value.length <= 4096,
  };
  const faults: string[] = [];
  const calls: string[] = [];
  let state: 'before' | 'running' | 'after' = 'before';
  let error = '0';
  const answer = (call: string, code: string, good = 'true', bad = 'false'): string => {
    calls.push(call);
    error = code;
    if (code !== '0') faults.push(`${call}: ${code}`);
    return code === '0' ? good : bad;
  };
  const bare = (given: readonly unknown[]): boolean => given.length === 1 && given[0] === '';
  return {
    data,
    faults,
    calls,
    LMSInitialize: (...given) => {
      const code = !bare(given) ? '201' : state === 'before' ? '0' : '101';
      if (code === '0') state = 'running';
      return answer('LMSInitialize', code);
    },
    LMSFinish: (...given) => {
      const code = !bare(given) ? '201' : state === 'running' ? '0' : '301';
      if (code === '0') state = 'after';
      return answer('LMSFinish', code);
    },
    LMSGetValue: (...given) => {
      const [name] = given as [string];
      const known = name === 'cmi.suspend_data' || readable.some((one) => name === `cmi.core.${one}`);
      const code = given.length !== 1 ? '201' : state !== 'running' ? '301' : known ? '0' : '401';
      return answer(`LMSGetValue ${name}`, code, data[name] ?? '', '');
    },
    LMSSetValue: (...given) => {
      const [name, value] = given as [string, unknown];
      const takes = writable[name];
      const fits = typeof value === 'string' && takes?.(value) === true;
      const code =
        given.length !== 2 ? '201' : state !== 'running' ? '301' : !takes ? '401' : fits ? '0' : '405';
      if (code === '0') data[name] = value as string;
      return answer(`LMSSetValue ${name}`, code);
    },
    LMSCommit: (...given) => answer('LMSCommit', !bare(given) ? '201' : state === 'running' ? '0' : '301'),
    LMSGetLastError: () => error,
  };
}
