import { describe, expect, test } from 'vitest';
import { findApi, startCourse } from '../../../components/course/run-time.ts';
import type { Api, Frame } from '../../../components/course/run-time.ts';
import { strictRunTime } from '../../support/strict-run-time.ts';

const NEW = { 'cmi.core.student_id': 's-17', 'cmi.core.lesson_status': 'not attempted' };

/** A clock that says 0 first and then so many seconds. */
const after = (seconds: number): (() => number) => {
  let asked = 0;
  return () => (asked++ === 0 ? 0 : seconds * 1000);
};

describe('The talk with a course system', () => {
  test('is taken by a strict run-time from the first call to the last', () => {
    const api = strictRunTime({ ...NEW });
    const course = startCourse(api, after(3723));
    expect([course.student, course.kept, course.over, course.problem]).toEqual([
      's-17',
      '',
      false,
      undefined,
    ]);
    expect(api.data['cmi.core.lesson_status']).toBe('incomplete');
    expect(course.keep('a[17,[]]', 33.4)).toBeUndefined();
    expect(course.finish(false)).toBeUndefined();
    course.leave();
    course.leave();
    expect(api.faults).toEqual([]);
    expect(api.calls.filter((call) => call === 'LMSFinish')).toHaveLength(1);
    expect(api.data).toMatchObject({
      'cmi.core.lesson_status': 'failed',
      'cmi.core.score.min': '0',
      'cmi.core.score.max': '100',
      'cmi.core.score.raw': '33',
      'cmi.suspend_data': 'a[17,[]]',
      // 3723 s are an hour, two minutes and three seconds.
      'cmi.core.session_time': '0001:02:03',
      'cmi.core.exit': '',
    });
  });

  test('asks to come back where all was not handed in, and leaves the status of what was', () => {
    const first = strictRunTime({ ...NEW });
    startCourse(first, after(5)).leave();
    expect([first.data['cmi.core.exit'], first.data['cmi.core.session_time']]).toEqual([
      'suspend',
      '0000:00:05',
    ]);
    const again = strictRunTime({ ...NEW, 'cmi.core.lesson_status': 'passed' });
    const course = startCourse(again, after(5));
    course.leave();
    expect([course.over, again.data['cmi.core.lesson_status'], again.faults]).toEqual([true, 'passed', []]);
  });

  test('tells the reader what was refused, and that nothing is kept where it did not begin', () => {
    const refusing: Api = {
      ...strictRunTime({ ...NEW }),
      LMSSetValue: () => 'false',
      LMSGetLastError: () => '405',
    };
    expect(startCourse(refusing, after(1)).keep('a', 0)).toBe(
      'The course system did not keep your work (error 405, at cmi.core.score.min, cmi.core.score.max, cmi.core.score.raw, cmi.suspend_data).',
    );
    const long = strictRunTime({ ...NEW });
    expect(startCourse(long, after(1)).keep('x'.repeat(4097), 0)).toContain('at cmi.suspend_data');
    const closed = strictRunTime({ ...NEW });
    closed.LMSInitialize('');
    const course = startCourse(closed, after(1));
    expect(course.problem).toContain('did not begin');
    expect(course.keep('a', 0)).toBeUndefined();
  });

  test('goes on where a call throws', () => {
    const broken = (): never => {
      throw new Error('gone');
    };
    const api: Api = { ...strictRunTime({ ...NEW }), LMSGetValue: broken, LMSCommit: broken };
    const course = startCourse(api, after(1));
    expect([course.kept, course.keep('a', 0)?.startsWith('The course system did not keep')]).toEqual([
      '',
      true,
    ]);
    expect(() => course.leave()).not.toThrow();
  });
});

describe('The run-time', () => {
  const api = strictRunTime({});

  test('is found up the parents, and then up those of the window that opened this one', () => {
    expect(findApi({ parent: { parent: { API: api } } })).toBe(api);
    expect(findApi({ parent: { API: null }, opener: { parent: { API: api } } })).toBe(api);
    expect(findApi({})).toBeUndefined();
  });

  test('is not looked for without an end, nor in windows that another host closes', () => {
    const top: { parent?: Frame } = {};
    top.parent = top;
    expect(findApi({ parent: top })).toBeUndefined();
    const closed: Frame = {
      get API(): Api {
        throw new Error('of another host');
      },
      parent: { API: api },
    };
    expect(findApi({ parent: closed })).toBe(api);
  });
});
