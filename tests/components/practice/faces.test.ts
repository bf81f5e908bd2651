import { describe, expect, it } from 'vitest';
import { drawShownFace } from '../../../components/practice/faces.ts';

const plug = { connector: 'din5', form: 'plug', name: 'a plug' } as const;

describe('a face of a task', () => {
  it('bears the labels of the task from left to right, in the picture and in its words', () => {
    const face = drawShownFace({ ...plug, view: 'mating', labels: ['', '5', '?', '', ''] });
    const at = (contact: string) => face.contacts.find((one) => one.contact === contact)?.label.text;
    // The mating face of a plug reads 3 5 2 4 1 (facts of the museum's page, as in the tests of the drawing).
    expect(['3', '5', '2', '4', '1', 'shell'].map(at)).toEqual(['', '5', '?', '', '', '']);
    expect(face.textAlternative).toBe(
      '5-pin DIN plug, mating face, key down. From left to right: no mark, 5, question mark, no mark, no mark.',
    );
  });

  it('says that the key is up where it is', () => {
    const face = drawShownFace({ ...plug, view: 'solder', turned: true, labels: ['a', '', '', '', 'b'] });
    expect(face.contacts.find(({ contact }) => contact === '3')?.label.text).toBe('a');
    expect(face.textAlternative).toContain('solder side, key up');
  });

  it('tells no side, in words or by its outlines, where the task asks for the side', () => {
    const labels = ['1', '4', '2', '5', '3'];
    for (const form of ['plug', 'jack'] as const) {
      const [one, other] = (['mating', 'solder'] as const).map((view) =>
        drawShownFace({ ...plug, form, view, labels, untold: true }),
      );
      expect(one?.textAlternative).toBe(other?.textAlternative);
      expect(one?.textAlternative).not.toMatch(/mating|solder/);
      expect(one?.outlines).toEqual(other?.outlines);
    }
  });

  it('of a phone plug is labelled from its nose', () => {
    const face = drawShownFace({
      connector: 'trs-3.5',
      form: 'plug',
      view: 'mating',
      labels: ['b', 'a', 'c'],
      name: 'a plug',
    });
    expect(face.contacts.map(({ contact, label }) => `${contact} ${label.text}`).sort()).toEqual([
      'ring a',
      'sleeve c',
      'tip b',
    ]);
    expect(face.textAlternative).toMatch(/From the nose to the handle: b, a, c\.$/);
  });
});
