/** What was thrown, in words. */
export function sayError(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
