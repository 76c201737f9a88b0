import type { APIRoute } from 'astro';
import { getCollection } from 'astro:content';
import { bookInOrder } from '../book/book-in-order.ts';

/** What practice by cases and the trainer's sheets draw from; fetched when one of them is opened. */
export const GET: APIRoute = async () => {
  const parts = await bookInOrder();
  return Response.json({
    cases: (await getCollection('cases')).map(({ data }) => data),
    sums: (await getCollection('practice')).map(({ data }) => data),
    chapters: parts.flatMap(({ chapters }) =>
      chapters.map(({ entry }) => ({ id: entry.id, title: entry.data.title })),
    ),
    handTasks: (await getCollection('handTasks')).map(({ data: { id, title } }) => ({ id, title })),
  });
};
