import type { APIRoute } from 'astro';
import { referenceTable, shortConductor } from '../core/answer/index.ts';
import { csvText } from '../core/board/index.ts';

/** The table of the quick reference, a row a pair of types. */
export const GET: APIRoute = () => {
  const rows = referenceTable().map(({ outputType, inputType, grade, conductors, ask }) => [
    outputType,
    inputType,
    grade,
    conductors?.map(shortConductor).join(' ') ?? '',
    ask ?? '',
  ]);
  return new Response(csvText([['sender', 'listener', 'grade', 'lead', 'ask for'], ...rows]), {
    headers: { 'Content-Type': 'text/csv; charset=utf-8' },
  });
};
