/** Handing text over as a file, with nothing else to carry. */

/** Hand text over as a file. */
export function saveText(name: string, text: string, type: string): void {
  saveBytes(name, text, type);
}

/** Hand bytes or text over as a file. */
export function saveBytes(name: string, content: string | Uint8Array<ArrayBuffer>, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
