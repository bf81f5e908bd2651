/** Text that is put into a page or an XML file. */

/** Signs that mean something there as numbers, without control characters, which XML forbids. */
export const escaped = (text: string): string =>
  text.replace(/\p{Cc}/gu, ' ').replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** Height of a frame before the page in it has told its own, pixels (our choice: a task with its answers on a phone). */
const FIRST_HEIGHT = 900;

/** The text that puts the page of a Set into a page of somebody else. */
export function frameText(address: string, title: string): string {
  return `<iframe src="${escaped(address)}" title="${escaped(title)}" width="100%" height="${FIRST_HEIGHT}" allow="clipboard-write"></iframe>`;
}
