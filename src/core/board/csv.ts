/** Rows as CSV (RFC 4180). */

/** Rows of like objects: a header, CRLF, quotes where needed; text that a sheet would run as a formula gets a quote in front. */
export function csvText(rows: readonly object[]): string {
  const [first] = rows;
  if (!first) return '';
  const keys = Object.keys(first);
  const lines = rows.map((row) =>
    keys.map((key) => csvField((row as Readonly<Record<string, unknown>>)[key])).join(','),
  );
  return `${[keys.map(csvField).join(','), ...lines].join('\r\n')}\r\n`;
}

function csvField(value: unknown): string {
  const text = typeof value === 'number' ? String(Number(value.toFixed(6))) : String(value ?? '');
  const safe = typeof value === 'string' && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
