/** The squares of a two-dimensional code as one path: a unit is one module. */

/**
 * A path that fills every dark module of a square code, neighbours in a row drawn as one box so that no hairline parts them.
 * @throws when a row is not as long as there are rows.
 */
export function modulesPath(dark: readonly (readonly boolean[])[]): string {
  const parts: string[] = [];
  dark.forEach((row, y) => {
    if (row.length !== dark.length)
      throw new RangeError(`code: row ${y} must have ${dark.length} modules, got ${row.length}`);
    let x = 0;
    while (x < row.length) {
      const from = x;
      while (row[x] === true) x++;
      if (x > from) parts.push(`M${from} ${y}h${x - from}v1h${from - x}z`);
      else x++;
    }
  });
  return parts.join('');
}
