import { describe, expect, it } from 'vitest';
import { answersAsText } from '../../src/ui/answers-as-text.ts';
import { answersAsCsv, answersAsJson } from '../../src/ui/files/answers-as-files.ts';
import { textOf } from '../../src/ui/file-text.ts';
import { evaluate, fillEntries, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import type { ResultFile, Worksheet } from '../../src/worksheets/machine/types.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import { readExamples } from '../content/read-content.ts';
import { sizeOf } from '../tools/sample-sizes.ts';
import { writtenText } from './written-text.ts';
import { commandFaults, faultsOf, fetchedFileFaults, takenTextFaults } from './outcome-faults.ts';
import { knownEntries, seededChance, seedOf } from './random-entries.ts';

/** A file that writes its text only when it is taken. */
class LateFile implements ResultFile {
  readonly fileName = 'late.csv';
  readonly mediaType = 'text/csv';
  readonly #text: string;
  constructor(text: string) {
    this.#text = text;
  }
  get text(): string {
    return this.#text;
  }
}

/** What is wrong with all that a reader can take away from a filled-in sheet. */
async function faultsOfTaken(worksheet: Worksheet, entries: Entries): Promise<readonly string[]> {
  const evaluation = evaluate(worksheet, entries);
  const { outcome } = evaluation;
  if (outcome === undefined) return [];
  const text = answersAsText(worksheet, entries, outcome);
  const json: unknown = JSON.parse(answersAsJson(worksheet, entries, outcome));
  const csv = answersAsCsv(worksheet, entries, outcome);
  return [
    ...faultsOf(worksheet.inputs, evaluation),
    ...(await fetchedFileFaults(evaluation)),
    ...takenTextFaults({ fileName: 'sheet.txt', mediaType: 'text/plain', text }, 'the text'),
    ...takenTextFaults({ fileName: 'sheet.csv', mediaType: 'text/csv', text: csv }, 'the table'),
    ...(JSON.stringify(json).includes('null') ? ['the JSON holds a null'] : []),
    ...(text.includes(outcome.verdict.sentence) ? [] : ['the text leaves out the verdict']),
    ...Object.values(outcome.answers)
      .filter((answer) => !text.includes(answer.text) || !csv.includes(answer.label.split('"')[0]!))
      .map(({ label }) => `the text or the table leaves out “${label}”`),
  ];
}

describe('texts to take away', () => {
  it.each([...worksheets.values()])(
    '$id: they are whole for examples and random entries',
    async (sheet) => {
      const chance = seededChance(seedOf(`${sheet.id} texts`));
      const random = Array.from(
        { length: sizeOf('taken') },
        () => knownEntries(sheet.inputs, chance).entries,
      );
      const examples = (readExamples().get(sheet.id) ?? []).map(({ entries }) =>
        fillEntries(sheet.inputs, entries),
      );
      const faults = [];
      for (const entries of [...examples, ...random]) {
        for (const fault of await faultsOfTaken(sheet, entries)) faults.push({ entries, fault });
      }
      expect(faults.slice(0, 3)).toEqual([]);
    },
  );

  it('of the keep list name each film frame once, in order, beside a camera frame and its time', () => {
    for (const { entries, id } of readExamples().get('keep-list')!) {
      const worksheet = findWorksheet('keep-list');
      const file = evaluate(worksheet, entries).outcome!.files![0]!;
      const [heading, ...lines] = writtenText(file).trimEnd().split('\n');
      expect(heading).toBe('film_frame,camera_frame,time,whole');
      expect(lines, id).toHaveLength(Number(entries['filmFrames']));
      let last = -1;
      lines.forEach((line, index) => {
        const [film, camera, time, trust] = line.split(',');
        expect(Number(film)).toBe(index);
        expect(Number(camera)).toBeGreaterThan(last);
        last = Number(camera);
        // Camera frames are 1/25, 1/50 or 1/100 s apart, so six decimals hold the time exactly.
        expect(Number(time) * Number(entries['cameraFps'])).toBeCloseTo(last, 3);
        expect(['sure', 'unsure']).toContain(trust);
      });
      const sure = lines.filter((line) => line.endsWith(',sure')).length;
      const answer = evaluate(worksheet, entries).outcome!.answers['sureFilmFrames']!;
      expect(sure).toBe(answer.value);
    }
  });
});

describe('the search for broken texts', () => {
  it('sees into a file that writes its text only when it is taken', () => {
    const { outcome, working } = evaluate(findWorksheet('keep-list'), {});
    const faults = (text: string): readonly string[] =>
      faultsOf(findWorksheet('keep-list').inputs, {
        messages: {},
        outcome: { ...outcome!, files: [new LateFile(text)] },
        working: working!,
      });
    expect(faults('a,b\n1,2\n')).toEqual([]);
    expect(faults('a,b\n1,NaN\n')).toHaveLength(1);
    expect(faults('a,b\n1,2,3\n')).toHaveLength(1);
    expect(faults('a,b\n"1,5",2\n')).toEqual([]);
    expect(faults('a,b\n')).toHaveLength(1);
    expect(faults('')).not.toEqual([]);
  });

  it('sees into a file whose code is fetched first', async () => {
    const { outcome, ...rest } = evaluate(findWorksheet('reel-script'), {});
    const texts = await Promise.all(outcome!.files!.map(textOf));
    expect(texts.map((text) => text.slice(0, 3))).toEqual(['#!/', '\uFEFF# ']);
    const file = {
      fileName: 'late.sh',
      mediaType: 'text/plain',
      text: () => Promise.resolve('NaN'),
    };
    const faults = await fetchedFileFaults({ ...rest, outcome: { ...outcome!, files: [file] } });
    expect(faults).toHaveLength(1);
  });

  it('sees a command that would not run as one line', () => {
    expect(commandFaults('ffmpeg -i "a.mkv" b.mkv', 'it')).toEqual([]);
    expect(commandFaults('ffmpeg -i "a.mkv b.mkv', 'it')).toHaveLength(1);
    expect(commandFaults('ffmpeg\n-i', 'it')).toHaveLength(1);
    expect(commandFaults('ffmpeg -r undefined', 'it')).toHaveLength(1);
  });
});
