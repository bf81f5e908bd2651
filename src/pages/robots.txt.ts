/** What a search engine may read: all of it. */
import type { APIRoute } from 'astro';
import { withBase } from '../../components/parts/with-base.ts';

/** The file for search engines, with the map of the site where the build knows the host's address. */
export const GET: APIRoute = ({ site }) => {
  const map = site ? `Sitemap: ${new URL(withBase('/sitemap-index.xml'), site).href}\n` : '';
  return new Response(`User-agent: *\nAllow: /\n${map}`, { headers: { 'content-type': 'text/plain' } });
};
