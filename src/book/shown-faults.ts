import { getCollection } from 'astro:content';
import type { ShownFault } from '../practice/fault-case.ts';
import { helpOf } from './fault-help.ts';
import { faultPictures } from './fault-pictures.ts';

/** The dictionary of faults as practice shows it. */
export async function shownFaults(): Promise<readonly ShownFault[]> {
  const chapters = await getCollection('chapters');
  const titles = new Map(chapters.map(({ id, data }) => [id, data.title]));
  const faults = (await getCollection('faults')).map(({ data }) => data);
  return faults
    .toSorted((a, b) => (a.place ?? 0) - (b.place ?? 0))
    .map((fault) => {
      const { id, name, group, seen, cause, cure, look } = fault;
      const { data, still } = faultPictures(look, name).fault;
      return {
        id,
        name,
        group,
        seen,
        cause,
        cure,
        scene: JSON.stringify(data),
        still,
        help: helpOf(fault, titles),
      };
    });
}
