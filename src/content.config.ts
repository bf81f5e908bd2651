import { defineCollection, reference } from 'astro:content';
import { file, glob } from 'astro/loaders';
import { z } from 'astro/zod';

/** How far an entry can be trusted; content/reference/statuses.json says what each mark means. */
const status = reference('statuses');

/** Place in a list that has an order of its own, from 1. */
const rank = z.int().positive();

/** Lessons stand in numbered folders, so that they sort; the address drops the number. */
const lessons = defineCollection({
  loader: glob({
    base: './content/lessons',
    pattern: '[0-9][0-9]-*/index.mdx',
    generateId: ({ entry }) => entry.replace(/^\d+-/, '').replace(/\/index\.mdx$/, ''),
  }),
  schema: z.strictObject({
    title: z.string(),
    /** The question from real life that the lesson opens with. */
    question: z.string(),
    /** One sentence for the list of lessons. */
    summary: z.string(),
    /** What the reader can do afterwards: three lines that go on from 'You can now'. */
    canNow: z.array(z.string()).length(3),
    /** Whether it is on the player's way, which leads straight to a lead that works. */
    player: z.boolean().default(false),
    /** What can hurt, the first told in full: entries of content/reference/cautions.json. */
    cautions: z.array(reference('cautions')).min(1),
    /** Where the facts come from: entries of content/reference/sources.json. */
    sources: z.array(reference('sources')).min(1),
    /** For whoever teaches it; the mistakes to expect and ready Sets come from the tasks of the lesson. */
    teach: z.strictObject({
      /** What students can do afterwards, in one sentence. */
      aim: z.string(),
      minutes: z.int().positive(),
      /** What has to be in the room. */
      kit: z.array(z.string()).min(1),
      /** A question to open with at the board, and what it comes to. */
      ask: z.string(),
      answer: z.string(),
    }),
  }),
});

/** Plans of a lesson of 45 minutes or of a day, step by step; the steps fill the minutes. */
const classPlans = defineCollection({
  loader: file('content/reference/class-plans.json'),
  schema: z.strictObject({
    id: z.string(),
    rank,
    title: z.string(),
    minutes: z.int().positive(),
    for: z.string(),
    steps: z.array(
      z.strictObject({
        minutes: z.int().positive(),
        does: z.string(),
        /** The lesson that it uses, by the name in its address. */
        lesson: reference('lessons').optional(),
        /** The page that it uses, by its address from the root. */
        page: z.templateLiteral(['/', z.string()]).optional(),
      }),
    ),
  }),
});

const statuses = defineCollection({
  loader: file('content/reference/statuses.json'),
  schema: z.strictObject({ id: z.string(), rank, words: z.string(), meaning: z.string() }),
});

const sources = defineCollection({
  loader: file('content/reference/sources.json'),
  schema: z.strictObject({
    id: z.string(),
    title: z.string(),
    kind: z.enum(['standard', 'data sheet', 'book or paper', 'other']),
    /** What the workbook takes from it. */
    usedFor: z.string(),
    /** What of it was read, and what was not. */
    read: z.string(),
    status,
  }),
});

const disagreements = defineCollection({
  loader: file('content/reference/disagreements.json'),
  schema: z.strictObject({
    id: z.string(),
    about: z.string(),
    sides: z.string(),
    choice: z.string(),
    sources: z.array(reference('sources')),
  }),
});

const glossary = defineCollection({
  loader: file('content/reference/glossary.json'),
  schema: z.strictObject({
    id: z.string(),
    term: z.string(),
    meaning: z.string(),
    status,
    /** What others call it. */
    also: z.array(z.string()).default([]),
    /** Other entries that help. */
    see: z.array(reference('glossary')).default([]),
  }),
});

const cautions = defineCollection({
  loader: file('content/reference/cautions.json'),
  schema: z.strictObject({
    id: z.string(),
    title: z.string(),
    rank,
    /** What can hurt, and how. */
    danger: z.string(),
    /** What to do about it, one step a line. */
    steps: z.array(z.string()).min(1),
    status,
    sources: z.array(reference('sources')).default([]),
  }),
});

/** What a player notices when it does not work, and what to do: eyes first, then swaps, then a meter. */
const symptoms = defineCollection({
  loader: file('content/reference/symptoms.json'),
  schema: z.strictObject({
    id: z.string(),
    sign: z.string(),
    eyes: z.string(),
    swap: z.string(),
    meter: z.string(),
    status,
  }),
});

/** Every collection of content, by the name that pages ask Astro for; an entry that breaks its schema fails the build. */
export const collections = {
  lessons,
  classPlans,
  statuses,
  sources,
  disagreements,
  glossary,
  cautions,
  symptoms,
};
