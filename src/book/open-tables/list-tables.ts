import { getCollection } from 'astro:content';
import { entryUnitSymbol } from '../../worksheets/machine/entry-text.ts';
import { worksheets } from '../../worksheets/registry.ts';
import type { InputSpec } from '../../worksheets/machine/types.ts';
import { allEntriesFromText } from '../entries-from-text.ts';
import { computedOutcome } from '../computed.ts';
import { tidyNumber, type OpenCell, type OpenTable } from './open-table.ts';

/** Every source that the book cites. */
export async function sourceTable(): Promise<OpenTable> {
  const sources = await getCollection('sources');
  return {
    id: 'sources',
    title: 'Sources',
    about:
      '“seen” tells how the values were read: text (in the source), secondary (in another page), memory, or none.',
    columns: [
      { key: 'id', label: 'Id, as cited in the book', unit: '' },
      { key: 'title', label: 'Title', unit: '' },
      { key: 'publisher', label: 'Publisher', unit: '' },
      { key: 'year', label: 'Year or period', unit: '' },
      { key: 'kind', label: 'Kind of publication', unit: '' },
      { key: 'seen', label: 'How it was read', unit: '' },
      { key: 'note', label: 'What was taken from it, and doubts', unit: '' },
      { key: 'url', label: 'Address', unit: '' },
    ],
    rows: sources.map(({ data }) => [
      data.id,
      data.title,
      data.publisher,
      data.year,
      data.kind,
      data.seen,
      data.note,
      data.url ?? null,
    ]),
  };
}

/** The words of the trade. */
export async function glossaryTable(): Promise<OpenTable> {
  const terms = await getCollection('glossary');
  return {
    id: 'glossary',
    title: 'Glossary',
    about: 'Every term with its definition. Other words and related terms are separated by “; ”.',
    columns: [
      { key: 'id', label: 'Id', unit: '' },
      { key: 'term', label: 'Term', unit: '' },
      { key: 'definition', label: 'Definition', unit: '' },
      { key: 'unit', label: 'Unit', unit: '' },
      { key: 'otherWords', label: 'Other words for it', unit: '' },
      { key: 'seeAlso', label: 'Ids of related terms', unit: '' },
      { key: 'chapter', label: 'Chapter that teaches it', unit: '' },
    ],
    rows: terms.map(({ data }) => [
      data.id,
      data.term,
      data.definition,
      data.unit ?? null,
      data.otherWords.join('; '),
      data.seeAlso.join('; '),
      data.chapter ?? null,
    ]),
  };
}

function range(spec: InputSpec): readonly [OpenCell, OpenCell] {
  return spec.kind === 'choice' || spec.kind === 'text'
    ? [null, null]
    : [tidyNumber(spec.minimum), tidyNumber(spec.maximum)];
}

function rangeUnit(spec: InputSpec): string {
  if (spec.kind === 'choice' || spec.kind === 'count' || spec.kind === 'text') return '';
  return entryUnitSymbol({ ...spec, entryUnit: spec.unit });
}

/** Every worksheet with its inputs and answers. */
export function worksheetTable(): OpenTable {
  return {
    id: 'worksheets',
    title: 'Worksheets: inputs and answers',
    about:
      'One line for each input and each answer at the book’s numbers. An input’s key also names it in a link: `/<chapter>/?w=<worksheet>&<key>=<text>`.',
    columns: [
      { key: 'worksheet', label: 'Worksheet', unit: '' },
      { key: 'title', label: 'Title', unit: '' },
      { key: 'chapter', label: 'Chapter', unit: '' },
      { key: 'part', label: 'input or answer', unit: '' },
      { key: 'key', label: 'Key', unit: '' },
      { key: 'label', label: 'In words', unit: '' },
      { key: 'kind', label: 'Kind of input', unit: '' },
      { key: 'unit', label: 'Unit of minimum, maximum and bare answer', unit: '' },
      { key: 'minimum', label: 'Smallest accepted', unit: '' },
      { key: 'maximum', label: 'Largest accepted', unit: '' },
      { key: 'text', label: 'Entry as typed, or answer as printed', unit: '' },
    ],
    rows: [...worksheets.values()].flatMap((worksheet) => {
      const head = [worksheet.id, worksheet.title, worksheet.chapter];
      const inputs = Object.entries(worksheet.inputs);
      const { answers } = computedOutcome(worksheet, allEntriesFromText(worksheet, ''));
      return [
        ...inputs.map(([key, spec]) => {
          const facts = [spec.kind, rangeUnit(spec), ...range(spec), spec.default];
          return [...head, 'input', key, spec.label, ...facts];
        }),
        ...Object.entries(answers).map(([key, { label, unit, text }]) => {
          return [...head, 'answer', key, label, null, unit ?? null, null, null, text];
        }),
      ];
    }),
  };
}
