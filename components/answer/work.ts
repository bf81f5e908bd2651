/** From an answer to a plan: the two jacks and the leads between them, for the drawing and for every other page. */
import { jackOfType } from '../../src/core/answer/index.ts';
import type { TalkAnswer, ToldJack } from '../../src/core/answer/index.ts';
import type { Grade } from '../../src/core/verdict/index.ts';
import { conductorWords, wiringWords } from '../../src/core/wiring/index.ts';
import type { LeadDrawing } from '../../src/draw/lead-shape.ts';
import { drawWork } from '../bench/figure.ts';
import { verdictOf, workOf } from '../bench/work.ts';
import type { Work } from '../bench/work.ts';

const GRADE_OF_KIND: Readonly<Record<TalkAnswer['kind'], Grade>> = {
  yours: 'good',
  buy: 'good',
  make: 'good',
  unsure: 'doubtful',
  none: 'bad',
};

/** How good an answer is. */
export function gradeOf({ kind }: TalkAnswer): Grade {
  return GRADE_OF_KIND[kind];
}

/** The link that the answer speaks of, or undefined where no lead can join the two. */
export function workOfAnswer(answer: TalkAnswer, output: ToldJack, input: ToldJack): Work | undefined {
  const { drawn } = answer;
  if (!drawn) return undefined;
  const { outputType, inputType } = drawn.pair;
  return workOf(jackOfType(output, outputType), jackOfType(input, inputType), named(drawn.leads));
}

/** Leads of a plan need names of their own. */
function named(leads: Work['plan']['leads']): Work['plan']['leads'] {
  return leads.map((lead, at) =>
    leads.findIndex(({ name }) => name === lead.name) === at
      ? lead
      : { ...lead, name: `${lead.name} (${at + 1})` },
  );
}

/** The drawing, each wire labelled by what it joins, as a manual would. */
export function drawAnswer(work: Work, width: number): LeadDrawing {
  return drawWork(work, verdictOf(work), 'active', 'solder', width, conductorWords);
}

/** The drawing for a listener. */
export function sayDrawing(work: Work): string {
  return work.plan.leads.map(({ name, conductors }) => `${name}: ${wiringWords(conductors)}.`).join(' ');
}
