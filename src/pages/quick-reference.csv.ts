import type { APIRoute } from 'astro';
import { referenceTable, shortConductor } from '../core/answer/index.ts';
import { csvText } from '../core/board/index.ts';

/** The table of the quick reference, a row a pair of types. */
export const GET: APIRoute = () => {
  const rows = referenceTable().map(({ outputType, inputType, grade, conductors, ask }) => ({
    sender: outputType,
    listener: inputType,
    grade,
    lead: conductors?.map(shortConductor).join(' ') ?? '',
    'ask for': ask ?? '',
  }));
  return new Response(csvText(rows), { headers: { 'Content-Type': 'text/csv; charset=utf-8' } });
};
