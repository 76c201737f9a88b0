import type { APIRoute, GetStaticPaths } from 'astro';
import { allOpenTables } from '../../book/open-tables/all-open-tables.ts';
import { openTableCsv, type OpenTable } from '../../book/open-tables/open-table.ts';

export const getStaticPaths = (async () => {
  const tables = await allOpenTables();
  return tables.map((table) => ({ params: { table: table.id }, props: { table } }));
}) satisfies GetStaticPaths;

export const GET: APIRoute<{ table: OpenTable }> = ({ props }) =>
  new Response(openTableCsv(props.table), { headers: { 'content-type': 'text/csv' } });
