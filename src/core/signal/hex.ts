/** A byte in writing, apart from what explains it: many places write bytes, few explain them. */

/** A byte as two capital hexadecimal digits. */
export function hexOf(byte: number): string {
  return byte.toString(16).toUpperCase().padStart(2, '0');
}
