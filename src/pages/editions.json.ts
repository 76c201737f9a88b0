import type { APIRoute } from 'astro';
import { editionsNewestFirst } from '../book/editions.ts';

/** How many points of safety each edition corrected; the build hands it to the offline copy. */
export const GET: APIRoute = async () => {
  const editions = (await editionsNewestFirst()).map(({ id, corrections }) => ({
    id,
    safetyPoints: corrections.filter(({ safety }) => safety !== undefined).length,
  }));
  return new Response(JSON.stringify(editions));
};
