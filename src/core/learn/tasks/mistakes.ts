/** The mistakes that the tasks of a lesson know, and what is said to each: for whoever teaches it. */
import { chanceOf } from './chance.ts';
import { SAID_TO_LEADS } from './grade-lead.ts';
import { TASKS_BY_LESSON } from './tasks.ts';
import type { Drawn, TaskKind } from './task.ts';

/** The mistakes of one kind of task. There are no names where any wrong choice is met in the same way. */
interface KnownMistakes {
  /** What the kind is called. */
  readonly title: string;
  readonly said: readonly { readonly names: readonly string[]; readonly sentence: string }[];
}

/** Seeds and levels that are looked at: cases of a kind come by turns, and few kinds have more of them. */
const SEEDS = 12;
const LEVELS_LOOKED_AT = [2, 3] as const;

/** Every known mistake of a lesson, by kind, each sentence once. Empty for a lesson without tasks. */
export function knownMistakes(lesson: string): readonly KnownMistakes[] {
  return (TASKS_BY_LESSON[lesson] ?? []).map((kind) => ({ title: kind.title, said: saidTo(kind) }));
}

function saidTo({ draw }: TaskKind): KnownMistakes['said'] {
  const names = new Map<string, Set<string>>();
  for (const level of LEVELS_LOOKED_AT)
    for (let seed = 0; seed < SEEDS; seed++) {
      const drawn = draw(level, chanceOf(seed));
      for (const { name, sentence } of drawn.slips) {
        const said = general(drawn, name, sentence);
        names.set(said, (names.get(said) ?? new Set()).add(name));
      }
    }
  const [[, all] = []] = names;
  return [...names].map(([sentence, found]) => ({
    sentence,
    names: names.size === 1 && (all?.size ?? 0) > 1 ? [] : [...found],
  }));
}

/** What is said to a mistake before the numbers of the case: to a lead, without what that lead does. */
function general({ form }: Drawn, name: string, sentence: string): string {
  return form.form === 'lead' ? (SAID_TO_LEADS.get(name) ?? sentence) : sentence;
}
