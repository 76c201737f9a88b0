import type { APIRoute } from 'astro';
import { searchRecords } from '../book/search-records.ts';

/** Input of the search index. The build reads it after the pages are written, then removes it. */
export const GET: APIRoute = async () => Response.json(await searchRecords());
