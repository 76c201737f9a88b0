// Everything that a worksheet prints, as plain text that a person can read through.
import type { Entries, Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { entryText } from '../../src/worksheets/machine/entry-text.ts';
import type { PictureData } from '../../src/worksheets/machine/picture-data.ts';
import type {
  Answer,
  InputSpec,
  Outcome,
  ResultFile,
  ResultTable,
  Worksheet,
} from '../../src/worksheets/machine/types.ts';
import { mixedEntries, untidyEntries } from './mixed-entries.ts';
import { drawnValue } from '../tools/drawn-value.ts';

/** Entries of one case, and what it is called. */
export interface PrintedCase {
  readonly title: string;
  readonly entries: Entries;
}

const FULL_FILE_LINES = 60;
const MIXED_CASES = 8;
const UNTIDY_CASES = 2;

/** No-break spaces are for the page. */
const plain = (text: string): string => text.replaceAll(/[^\S\n]/gu, ' ');
const indented = (lines: readonly string[]): readonly string[] => lines.map((line) => `  ${line}`);
const levelled = (level: string | undefined): string => (level === undefined ? '' : ` [${level}]`);

function answerLine(key: string, { label, text, imperial, level, note, unit }: Answer): string {
  const inches = imperial === undefined ? '' : ` = ${imperial.text}`;
  const said = note === undefined ? '' : ` – ${note}`;
  const bare = unit === undefined ? '' : ` {${unit}}`;
  return `${label} (${key}): ${text}${inches}${bare}${levelled(level)}${said}`;
}

function tableLines({ caption, columns, rows }: ResultTable): readonly string[] {
  return [
    `table “${caption}”: ${columns.join(' | ')}`,
    ...indented(rows.map(({ cells, level }) => `${cells.join(' | ')}${levelled(level)}`)),
  ];
}

async function fileLines(file: ResultFile): Promise<readonly string[]> {
  const { fileName, mediaType, text, isShown } = file;
  const lines = (typeof text === 'string' ? text : await text()).split('\n');
  const shown =
    lines.length <= FULL_FILE_LINES
      ? lines
      : [...lines.slice(0, FULL_FILE_LINES / 2), '…', ...lines.slice(-FULL_FILE_LINES / 4)];
  const first = `file ${fileName}, ${mediaType}, ${lines.length} lines${isShown === true ? ', shown first' : ''}`;
  return [first, ...indented(shown)];
}

function pictureLines({ name, alternative, ...data }: PictureData): readonly string[] {
  return [
    `picture ${name}: ${alternative}`,
    ...indented(Object.entries(data).map(([key, part]) => `${key}: ${drawnValue(part)}`)),
  ];
}

function outcomeLines(outcome: Outcome): readonly string[] {
  const { verdict, answers, tables = [], cautions = [], commands = [] } = outcome;
  return [
    `[${verdict.level}] ${verdict.sentence}`,
    ...Object.entries(answers).map(([key, answer]) => answerLine(key, answer)),
    ...tables.flatMap(tableLines),
    ...cautions.map((caution) => `caution: ${caution}`),
    ...commands.map(({ label, text }) => `command “${label}”: ${text}`),
  ];
}

function refusalLines({ messages, message }: Evaluation): readonly string[] {
  return [
    ...Object.entries(messages).map(([key, text]) => `refused at ${key}: ${text}`),
    ...(message === undefined ? [] : [`refused: ${message}`]),
  ];
}

function entriesLine(worksheet: Worksheet, entries: Entries): string {
  return Object.entries(entries)
    .map(([key, text]) => `${key} ${entryText(worksheet.inputs[key]!, text)}`)
    .join('; ');
}

async function caseLines(
  worksheet: Worksheet,
  { title, entries }: PrintedCase,
): Promise<readonly string[]> {
  const evaluation = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
  const { outcome, working } = evaluation;
  const files = await Promise.all((outcome?.files ?? []).map(fileLines));
  return [
    '',
    `## ${title}`,
    `with ${entriesLine(worksheet, entries) || 'nothing typed'}`,
    ...(outcome === undefined
      ? refusalLines(evaluation)
      : [
          ...outcomeLines(outcome),
          ...files.flat(),
          ...(outcome.pictures ?? []).flatMap(pictureLines),
          ...(working?.() ?? []).map(
            ({ words, sum }) => `working: ${words}${sum === undefined ? '' : ` ${sum}`}`,
          ),
        ]),
  ];
}

/** Entries of a field that differ from what the sheet opens with: choices, ends of a range, examples. */
export function otherEntries(spec: InputSpec): readonly string[] {
  if (spec.kind === 'choice')
    return Object.keys(spec.options).filter((key) => key !== spec.default);
  const examples =
    spec.kind === 'list' ? spec.accepted.split(/ or /u) : spec.accepted.split(/, | or /u);
  const isLeftOut = spec.kind === 'optional-quantity' || (spec.kind === 'list' && spec.mayBeEmpty);
  const ends = spec.kind === 'count' ? [String(spec.minimum), String(spec.maximum)] : [];
  const all = [...examples.map((text) => text.trim()), ...ends, ...(isLeftOut ? [''] : [])];
  return [...new Set(all)].filter((text) => text !== spec.default);
}

/** What changes when one field alone differs from what the sheet opens with. */
function changeLines(worksheet: Worksheet): readonly string[] {
  const opening = evaluate(worksheet, fillEntries(worksheet.inputs, {}));
  const said = new Set(opening.outcome === undefined ? [] : outcomeLines(opening.outcome));
  return Object.entries(worksheet.inputs).flatMap(([key, spec]) =>
    otherEntries(spec).flatMap((text) => {
      const evaluation = evaluate(worksheet, fillEntries(worksheet.inputs, { [key]: text }));
      const lines =
        evaluation.outcome === undefined
          ? refusalLines(evaluation)
          : outcomeLines({ ...evaluation.outcome, commands: [] });
      const changed = lines.filter((line) => !said.has(line));
      return [
        `${key} ${text === '' ? 'left empty' : entryText(spec, text)}:${changed.length === 0 ? ' no change' : ''}`,
        ...indented(changed),
      ];
    }),
  );
}

/** What is said when several fields differ, without files and pictures. */
function mixedLines(worksheet: Worksheet): readonly string[] {
  return mixedEntries(worksheet.id, worksheet.inputs, MIXED_CASES).flatMap((entries) => {
    const evaluation = evaluate(worksheet, fillEntries(worksheet.inputs, entries));
    const { outcome } = evaluation;
    return [
      `${entriesLine(worksheet, entries)}:`,
      ...indented(
        outcome === undefined
          ? refusalLines(evaluation)
          : outcomeLines({ ...outcome, commands: [] }),
      ),
    ];
  });
}

/** All that a worksheet says: about itself, in each case, and when one field differs. */
export async function printedSheet(
  worksheet: Worksheet,
  cases: readonly PrintedCase[],
): Promise<string> {
  const { id, title, question, chapter, model, sources, cautions, answerLabels } = worksheet;
  const opening = { title: 'As it opens', entries: {} };
  const untidy = untidyEntries(id, worksheet.inputs, UNTIDY_CASES).map((entries, index) => ({
    title: `No figure round ${index + 1}`,
    entries,
  }));
  const said = await Promise.all(
    [opening, ...cases, ...untidy].map((each) => caseLines(worksheet, each)),
  );
  const lines = [
    `# ${title} (${id}, chapter ${chapter})`,
    question,
    `Model: ${model}`,
    ...cautions.map((caution) => `Caution: ${caution}`),
    `Sources: ${sources.join(', ')}`,
    `Answers: ${Object.values(answerLabels).join(', ')}`,
    ...said.flat(),
    '',
    '## With one field changed from the opening: the lines that differ',
    ...changeLines(worksheet),
    '',
    '## With several fields changed from the opening',
    ...mixedLines(worksheet),
  ];
  return `${lines.map((line) => plain(line).trimEnd()).join('\n')}\n`;
}
