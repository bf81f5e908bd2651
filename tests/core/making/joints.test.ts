import { describe, expect, it } from 'vitest';
import { JOINT_EDGES, JOINT_REMEDIES } from '../../../src/core/making/joints.ts';

describe('joints as the eye meets them', () => {
  it('are left alone where the solder ends in a thin edge on both metals, and nowhere else', () => {
    for (const { words, remedy } of JOINT_EDGES)
      expect(remedy === 'leave', words).toBe(words.includes('thin'));
  });

  it('are never judged by shine', () => {
    for (const { words } of JOINT_EDGES) expect(words).not.toMatch(/shin|dull|bright/);
  });

  it('are told apart in words, and every remedy is of use to one', () => {
    expect(new Set(JOINT_EDGES.map(({ words }) => words)).size).toBe(JOINT_EDGES.length);
    expect(new Set(JOINT_EDGES.map(({ remedy }) => remedy))).toEqual(new Set(JOINT_REMEDIES));
  });
});
