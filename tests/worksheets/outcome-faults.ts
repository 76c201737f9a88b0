import type { Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import type { InputSpecs, ResultFile } from '../../src/worksheets/machine/types.ts';

const BROKEN_WORDS = ['NaN', 'Infinity', 'undefined', 'null', '[object '];
const BROKEN_TEXT = /\bNaN\b|Infinity|\bundefined\b|\[object |\bnull\b/u;

/** The plain search comes first: a file can be a megabyte, and the pattern alone is slow on it. */
function isBroken(text: string): boolean {
  return BROKEN_WORDS.some((word) => text.includes(word)) && BROKEN_TEXT.test(text);
}

function faultsWithin(value: unknown, place: string): readonly string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${place} is ${value}`];
  if (typeof value === 'string')
    return isBroken(value) ? [`${place} says “${value.slice(0, 200)}”`] : [];
  if (Array.isArray(value)) {
    return value.flatMap((item, index) => faultsWithin(item, `${place}[${index}]`));
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, item]) => faultsWithin(item, `${place}.${key}`));
  }
  return [];
}

/** Fields of one line of comma-separated text; a quoted field may hold commas and doubled quotes. */
function fieldsOf(line: string): readonly string[] {
  return line.match(/(?:^|,)(?:"(?:[^"]|"")*"|[^",]*)/gu) ?? [];
}

/**
 * What is wrong with a text that a reader takes away. It is asked for by name: a file may write its text only
 * when someone takes it, and then no list of its properties shows that there is one.
 */
export function takenTextFaults(
  file: Pick<ResultFile, 'fileName' | 'mediaType'> & { readonly text: string },
  place: string,
): readonly string[] {
  const { fileName, mediaType, text } = file;
  const faults: string[] = [];
  if (!/^[a-z][a-z0-9-]*\.[a-z0-9]+$/u.test(fileName))
    faults.push(`${place} is named “${fileName}”`);
  if (!/^[a-z]+\/[a-z]+$/u.test(mediaType)) faults.push(`${place} is of type “${mediaType}”`);
  if (text.trim() === '') faults.push(`${place} is empty`);
  // An output of ffmpeg that goes nowhere is called null, in either shell.
  const said = text.replaceAll(/(?<=-f'?,? '?)null\b/gu, 'nowhere');
  if (isBroken(said)) faults.push(`${place} says “${BROKEN_TEXT.exec(said)![0]}”`);
  if (mediaType === 'text/csv') {
    const lines = text.trimEnd().split('\n');
    const columns = fieldsOf(lines[0]!).length;
    const ragged = lines.find((line) => fieldsOf(line).length !== columns);
    if (ragged !== undefined)
      faults.push(`${place} has ${columns} columns, but not in “${ragged}”`);
    if (lines.length < 2) faults.push(`${place} has a heading only`);
  }
  return faults;
}

/** A file with its parts named: one that writes its text late has no list of them. */
const namedFile = ({ fileName, mediaType, text }: ResultFile): ResultFile => ({
  fileName,
  mediaType,
  text,
});

/** What is wrong with the files whose code is fetched when someone takes them. */
export async function fetchedFileFaults({ outcome }: Evaluation): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const { text, fileName, mediaType } of outcome?.files ?? []) {
    if (typeof text === 'string') continue;
    const file = { fileName, mediaType, text: await text() };
    faults.push(...takenTextFaults(file, `file “${fileName}”`));
  }
  return faults;
}

/** What is wrong with a command: it is pasted as one line, and the shell reads its quotes in pairs. */
export function commandFaults(text: string, place: string): readonly string[] {
  const faults: string[] = [];
  if (text.trim() === '' || text !== text.trim())
    faults.push(`${place} is empty or has space about it`);
  if (text.includes('\n')) faults.push(`${place} has more than one line`);
  if ((text.match(/"/gu)?.length ?? 0) % 2 !== 0)
    faults.push(`${place} has an odd number of quotes`);
  if (isBroken(text)) faults.push(`${place} says “${BROKEN_TEXT.exec(text)![0]}”`);
  return faults;
}

/**
 * What is wrong with an evaluation, as sentences: a number that is none, a broken text, an outcome
 * beside a message, neither of both, a message for a field that does not exist, an empty sentence.
 *
 * The files of an outcome are written only when someone takes them, which can be slow; a long run
 * looks into some of them. A file whose code has to be fetched first is looked into by
 * `fetchedFileFaults`.
 */
export function faultsOf(
  specs: InputSpecs,
  evaluation: Evaluation,
  withFiles = true,
): readonly string[] {
  const { messages, message, outcome } = evaluation;
  const working = evaluation.working?.();
  const refusals = [...Object.values(messages), ...(message === undefined ? [] : [message])];
  const faults: string[] = [];
  if (outcome !== undefined && refusals.length > 0) {
    faults.push('there is an outcome beside a message');
  }
  if (outcome === undefined && refusals.length === 0) {
    faults.push('there is neither an outcome nor a message');
  }
  for (const [key, text] of Object.entries(messages)) {
    if (!Object.hasOwn(specs, key)) faults.push(`a message is for “${key}”, which is no input`);
    if (text.trim() === '') faults.push(`the message for “${key}” is empty`);
  }
  if (outcome !== undefined) {
    const { files = [], ...shown } = outcome;
    faults.push(...faultsWithin(shown, 'outcome'), ...faultsWithin(working, 'working'));
    if (withFiles) {
      for (const { text, ...file } of files.map(namedFile)) {
        if (typeof text !== 'string') continue;
        faults.push(...takenTextFaults({ ...file, text }, `file “${file.fileName}”`));
      }
    }
    for (const { label, text } of outcome.commands ?? []) {
      if (label.trim() === '') faults.push(`a command has no label: ${text}`);
      faults.push(...commandFaults(text, `command “${label}”`));
    }
    if (outcome.verdict.sentence.trim() === '') faults.push('the verdict is empty');
    if (Object.keys(outcome.answers).length === 0) faults.push('there are no answers');
    for (const [key, answer] of Object.entries(outcome.answers)) {
      if (answer.text.trim() === '') faults.push(`answer “${key}” is empty`);
      if (answer.label.trim() === '') faults.push(`answer “${key}” has no label`);
    }
    if (working === undefined || working.length === 0) faults.push('there is no working');
    for (const table of outcome.tables ?? []) {
      for (const row of table.rows) {
        if (row.cells.length !== table.columns.length) {
          faults.push(`a row of “${table.caption}” has ${row.cells.length} cells`);
        }
      }
    }
  }
  return faults;
}
