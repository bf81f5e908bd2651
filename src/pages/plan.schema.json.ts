/** The JSON Schema of the plan file, published with the site. */
import type { APIRoute } from 'astro';
import { planSchema } from '../core/plan/index.ts';

/** The schema as a file of its own address, typed as JSON Schema, written when the site is built. */
export const GET: APIRoute = () =>
  new Response(JSON.stringify(planSchema(), undefined, 2), {
    headers: { 'content-type': 'application/schema+json' },
  });
