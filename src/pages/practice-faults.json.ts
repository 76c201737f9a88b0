import type { APIRoute } from 'astro';
import { shownFaults } from '../book/shown-faults.ts';

/** The dictionary of faults for practice; fetched when a recording is to be judged. */
export const GET: APIRoute = async () => Response.json(await shownFaults());
