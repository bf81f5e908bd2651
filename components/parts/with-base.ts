/** Addresses of pages and files wherever the site stands. */

const BASE = import.meta.env.BASE_URL.replace(/\/$/, '');

/** An address from the root of the site ('/bench/') as an address on the host, where the site may stand in a folder (`BASE_PATH`). */
export function withBase(address: `/${string}`): string {
  return BASE + address;
}

/** The address of the site itself, without a last slash, as the page that is open sees it. */
export function siteOfPage(): string {
  return location.origin + BASE;
}
