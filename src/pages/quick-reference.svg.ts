import type { APIRoute } from 'astro';
import { referenceTable, shortConductor, sayType, typesOf } from '../core/answer/index.ts';

/** Room of a cell, pixels. */
const CELL = { width: 116, height: 30 };

const text = (x: number, y: number, words: string, size = 11): string =>
  `<text x="${x}" y="${y}" font-size="${size}" font-family="sans-serif">${words}</text>`;

/** The table of the quick reference as a drawing, for a slide or a poster. */
export const GET: APIRoute = () => {
  const [outs, ins] = [typesOf('out'), typesOf('in')];
  const cells = referenceTable();
  const name = (style: (typeof outs)[number]): string => sayType(style).slice(0, 19);
  const head = ins.map((style, at) => text((at + 1) * CELL.width + 6, 20, name(style)));
  const rows = outs.flatMap((out, row) => [
    text(6, (row + 1) * CELL.height + 20, name(out)),
    ...ins.map((into, column) => {
      const cell = cells.find(({ outputType, inputType }) => outputType === out && inputType === into);
      const words = cell?.conductors?.map(shortConductor).join(' ') ?? 'no plain lead';
      return text((column + 1) * CELL.width + 6, (row + 1) * CELL.height + 20, words);
    }),
  ]);
  const [width, height] = [(ins.length + 1) * CELL.width, (outs.length + 1) * CELL.height];
  const lines = outs.map(
    (_, at) => `<path d="M0 ${(at + 1) * CELL.height}H${width}" stroke="#777" stroke-width="0.5"/>`,
  );
  return new Response(
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"><title>The lead between two types of jack, sender at the left</title>${[...lines, ...head, ...rows].join('')}</svg>\n`,
    { headers: { 'Content-Type': 'image/svg+xml' } },
  );
};
