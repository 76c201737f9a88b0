import { componentTags } from './chapter-tags.mjs';

const mentioned = (body: string, component: string): readonly string[] => [
  ...new Set(
    componentTags(body).flatMap(({ name, attributes }) =>
      name === component
        ? attributes.flatMap((each) => (each.name === 'id' ? each.value : []))
        : [],
    ),
  ),
];

/** Ids of the sources that a chapter's text cites, in order. */
export function sourcesIn(body: string): readonly string[] {
  return mentioned(body, 'Source');
}
