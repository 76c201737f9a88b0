/** Kinds of results in the order they are shown, with the heading of their group. */
export const KINDS = {
  chapter: 'Chapters',
  section: 'Sections of chapters',
  worksheet: 'Worksheets',
  fault: 'Faults in pictures',
  tool: 'Sheets and tools',
  example: 'Worked examples',
  table: 'Tables',
  term: 'Glossary',
  source: 'Sources',
} as const;

export type Kind = keyof typeof KINDS;
