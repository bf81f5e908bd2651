import { withBase } from '../parts/with-base.ts';
import { getCollection, getEntry, type CollectionEntry } from 'astro:content';

/** Collections of content/reference that authors point into by id. */
type Reference = 'glossary' | 'cautions' | 'sources' | 'statuses';

/**
 * The entry with this id. Throws, naming the file an author has to look at, when there is none.
 */
export async function entryOf<Name extends Reference>(
  name: Name,
  id: string,
): Promise<CollectionEntry<Name>> {
  const entry = await getEntry(name, id);
  if (entry === undefined) {
    throw new Error(`content/reference/${name}.json: needs an entry with the id '${id}', got none`);
  }
  // The compiler does not carry the name of the collection through the lookup.
  return entry as CollectionEntry<Name>;
}

/** A lesson with its place in the row and its address. */
export interface PlacedLesson {
  readonly entry: CollectionEntry<'lessons'>;
  readonly number: number;
  readonly address: string;
  /** Time that it takes, without its tasks. */
  readonly minutes: number;
}

/** Time for one part: its text, its question and its figure. Ours, from no trial. */
const MINUTES_A_PART = 4;

/** Times are told to so many minutes. */
const MINUTES_STEP = 5;

/** Time for a lesson, by its parts. */
function minutesOf({ body = '' }: CollectionEntry<'lessons'>): number {
  const parts = body.match(/<Part\b/g)?.length ?? 0;
  return Math.round((parts * MINUTES_A_PART) / MINUTES_STEP) * MINUTES_STEP;
}

/** Every lesson in order. The number is that of its folder; throws when two lessons share one. */
export async function lessonsInOrder(): Promise<readonly PlacedLesson[]> {
  const lessons = (await getCollection('lessons'))
    .map((entry) => ({
      entry,
      number: numberOf(entry),
      minutes: minutesOf(entry),
      address: withBase(`/lessons/${entry.id}/`),
    }))
    .sort((one, other) => one.number - other.number);
  lessons.forEach(({ number, entry }, place) => {
    if (lessons[place - 1]?.number === number) {
      throw new Error(`lesson '${entry.id}': needs a number of its own, got ${number}, which is taken`);
    }
  });
  return lessons;
}

function numberOf(entry: CollectionEntry<'lessons'>): number {
  const number = /\/(\d\d)-[^/]+\/index\.mdx$/.exec(entry.filePath ?? '')?.[1];
  if (number === undefined) {
    throw new Error(
      `lesson '${entry.id}': needs a folder named like '01-the-loop', got '${entry.filePath ?? 'no file'}'`,
    );
  }
  return Number(number);
}

/** The lessons in order as they stand in a list; those with tasks are named by who knows. */
export async function listedLessons(withTasks: readonly string[]) {
  return (await lessonsInOrder()).map(({ entry, number, minutes, address }) => ({
    name: entry.id,
    title: entry.data.title,
    summary: entry.data.summary,
    player: entry.data.player,
    tasks: withTasks.includes(entry.id),
    number,
    minutes,
    address,
  }));
}
