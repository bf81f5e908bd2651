/** What stands in the workbook for whoever teaches: for each lesson in its front matter, and the plans of a class. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lessonFolders, readLesson } from '../support/lesson-text.ts';
import { gradeOf } from '../support/readability.ts';

interface ClassPlan {
  readonly id: string;
  readonly minutes: number;
  readonly for: string;
  readonly steps: readonly { readonly minutes: number; readonly does: string; readonly lesson?: string }[];
}
const PLANS = JSON.parse(readFileSync('content/reference/class-plans.json', 'utf8')) as readonly ClassPlan[];
const FOLDERS = lessonFolders();

/** Grade 9 is read at fourteen. */
const GRADE = 9;

/** The words of a field of the teaching part of a lesson's front matter. */
function fieldOf(folder: string, field: string): string {
  const [, , teach = ''] = /^(teach:\n)([\s\S]*)$/m.exec(readLesson(folder).frontMatter) ?? [];
  return (new RegExp(`^  ${field}: (.*)$`, 'm').exec(teach)?.[1] ?? '').replace(/^['"]|['"]$/g, '');
}

describe('For the teacher of a lesson', () => {
  test.each(FOLDERS)(
    '%s has an aim, a question for the board and what it comes to, in plain words',
    (folder) => {
      const [aim, ask, answer] = ['aim', 'ask', 'answer'].map((field) => fieldOf(folder, field)) as [
        string,
        string,
        string,
      ];
      expect(aim).toMatch(/^Students can .+\.$/);
      expect(ask).toMatch(/\?$/);
      expect(answer).toMatch(/\.$/);
      for (const words of [ask, answer]) expect(gradeOf(words), words).toBeLessThanOrEqual(GRADE);
      expect(Number(fieldOf(folder, 'minutes'))).toBeGreaterThan(0);
    },
  );
});

describe('Plans for a class', () => {
  test('are four of 45 minutes and one of a day, each filled by its steps', () => {
    expect(PLANS.map(({ minutes }) => minutes)).toEqual([45, 45, 45, 45, 390]);
    for (const { minutes, steps } of PLANS)
      expect(steps.reduce((sum, step) => sum + step.minutes, 0)).toBe(minutes);
  });

  test('name lessons that there are, and are read at fourteen', () => {
    const names = FOLDERS.map((folder) => folder.replace(/^\d+-/, ''));
    for (const { steps } of PLANS) {
      for (const { lesson } of steps) if (lesson !== undefined) expect(names).toContain(lesson);
      expect(gradeOf(steps.map(({ does }) => does).join(' '))).toBeLessThanOrEqual(GRADE);
    }
  });

  test('ask for no soldering without washing of hands, moving air and eyes covered', () => {
    const hot = PLANS.flatMap(({ steps }) => steps).filter(({ does }) => /^Solder /.test(does));
    expect(hot).toHaveLength(1);
    expect(hot[0]?.does).toMatch(/extraction and eye protection.*Wash hands/);
  });
});
