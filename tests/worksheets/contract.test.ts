import { basename, dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import { textOf } from '../../src/ui/file-text.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { findWorksheet, worksheets } from '../../src/worksheets/registry.ts';
import type {
  InputSpec,
  InputSpecs,
  Outcome,
  Worksheet,
} from '../../src/worksheets/machine/types.ts';
import { readChapters, readSources } from '../content/read-content.ts';
import { SAMPLES } from '../tools/sample-sizes.ts';
import { cornerFaults, endsOf } from './corner-entries.ts';
import { hostileTexts } from './hostile-texts.ts';
import { faultsOf } from './outcome-faults.ts';

const modules = import.meta.glob<{ readonly worksheet: Worksheet }>(
  '../../src/worksheets/*/*/worksheet.ts',
  { eager: true },
);
const worksheetFiles = Object.entries(modules).map(([path, { worksheet }]) => ({
  fileName: basename(dirname(path)),
  worksheet,
}));
const sourceIds = new Set(readSources().map(({ id }) => id));
const chapterIds = new Set(readChapters().map(({ id }) => id));

const specsOf = (worksheet: Worksheet): InputSpecs => worksheet.inputs;

/** An outcome with the text of each file written out. */
async function withTexts(outcome: Outcome | undefined): Promise<unknown> {
  const files = outcome?.files?.map(async (file) => ({ ...file, text: await textOf(file) }));
  return { ...outcome, files: await Promise.all(files ?? []) };
}

/** The single examples in a text such as `18, 16 2/3 or 16,67`. */
function acceptedExamples(spec: Exclude<InputSpec, { kind: 'choice' }>): readonly string[] {
  const isOneText = spec.kind === 'list' || spec.kind === 'text';
  const separator = isOneText ? /\s+or\s+/u : /,\s+|\s+or\s+/u;
  return spec.accepted.split(separator).map((text) => text.trim());
}

/** What is wrong with the way a sheet takes a text that no reader should have typed, as sentences. */
function hostileFaults(
  worksheet: Worksheet,
  key: string,
  spec: InputSpec,
  text: string,
): readonly string[] {
  try {
    return hostileAnswerFaults(worksheet, key, spec, text).map((fault) => `“${text}”: ${fault}`);
  } catch (error) {
    return [`“${text}”: it throws ${String(error)}`];
  }
}

function hostileAnswerFaults(
  worksheet: Worksheet,
  key: string,
  spec: InputSpec,
  text: string,
): readonly string[] {
  const specs = specsOf(worksheet);
  const read = (entry: string) => evaluate(worksheet, { ...fillEntries(specs, {}), [key]: entry });
  const evaluation = read(text);
  // A name is given back as it was typed, “NaN” too; any other broken value is a fault.
  const isEcho = (fault: string): boolean =>
    spec.kind === 'text' && fault.endsWith(`says “${text.trim().replace(/^-/u, '')}”`);
  const faults = faultsOf(specs, evaluation).filter((fault) => !isEcho(fault));
  if (evaluation.outcome !== undefined) return faults;
  const reason = evaluation.messages[key];
  if (reason === undefined) {
    // Accepted by itself, but it does not fit another field or the whole.
    const others = [...Object.values(evaluation.messages), evaluation.message ?? ''].join(' ');
    if (!/Expected |Try /u.test(others)) faults.push(`what does not fit is not told: ${others}`);
  } else if (spec.kind === 'choice') {
    for (const option of Object.values(spec.options)) {
      if (!reason.includes(option)) faults.push(`“${option}” is not offered: ${reason}`);
    }
  } else if (!reason.startsWith('Expected ')) {
    if (!reason.includes(`Try ${spec.accepted}.`)) faults.push(`nothing to try: ${reason}`);
  } else if (reason.includes('An entry looks like')) {
    if (!reason.includes(`An entry looks like ${spec.accepted}.`)) {
      faults.push(`another example: ${reason}`);
    }
    const [example] = acceptedExamples(spec);
    if (read(example!).messages[key] !== undefined) {
      faults.push(`refused, and so is its own example “${example}”`);
    }
  }
  return faults;
}

describe('the registry', () => {
  it('holds every worksheet file, each under the name of its file', () => {
    expect(worksheetFiles.length).toBeGreaterThan(0);
    expect(worksheetFiles.map(({ worksheet }) => worksheet.id)).toEqual(
      worksheetFiles.map(({ fileName }) => fileName),
    );
    expect(worksheets.size).toBe(worksheetFiles.length);
  });

  it('names the known ids when one is asked for that does not exist', () => {
    expect(() => findWorksheet('no-such-worksheet')).toThrow(/Known: .*flash-rate/u);
  });

  it('has no two worksheets with the same title', () => {
    const titles = [...worksheets.values()].map(({ title }) => title);
    expect(titles.filter((title, index) => titles.indexOf(title) !== index)).toEqual([]);
  });
});

describe.each([...worksheets.values()])('worksheet $id', (worksheet: Worksheet) => {
  const specs = specsOf(worksheet);
  const defaults = fillEntries(specs, {});

  it('says what it is in plain words', () => {
    expect(worksheet.id).toMatch(/^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/u);
    expect(worksheet.question).toMatch(/\?$/u);
    expect(worksheet.title.trim()).not.toBe('');
    expect(worksheet.model.trim()).not.toBe('');
    for (const caution of worksheet.cautions) expect(caution).toMatch(/[.!]$/u);
  });

  it('belongs to a chapter of the book', () => {
    expect([...chapterIds]).toContain(worksheet.chapter);
  });

  it('cites sources that exist', () => {
    expect(worksheet.sources.length).toBeGreaterThan(0);
    expect(worksheet.sources.filter((id) => !sourceIds.has(id))).toEqual([]);
  });

  it('computes from its defaults, with an answer in every line', () => {
    const evaluation = evaluate(worksheet, defaults);
    expect(evaluation.messages).toEqual({});
    expect(evaluation.message).toBeUndefined();
    expect(evaluation.outcome).toBeDefined();
    expect(faultsOf(specs, evaluation)).toEqual([]);
  });

  it('gives the same outcome twice', async () => {
    const [once, twice] = [evaluate(worksheet, defaults), evaluate(worksheet, defaults)];
    expect(await withTexts(once.outcome)).toEqual(await withTexts(twice.outcome));
    expect(once.working?.()).toEqual(twice.working?.());
  });

  it('computes at the corners of its ranges or names the field that does not fit', () => {
    expect(cornerFaults(worksheet, SAMPLES.corners.command)).toEqual([]);
  });

  it('accepts both ends of each range by themselves', () => {
    for (const [key, spec] of Object.entries(specs)) {
      for (const end of endsOf(spec)) {
        const reason = evaluate(worksheet, { ...defaults, [key]: end }).messages[key] ?? '';
        // The core may refuse a combination (“Expected …”), but the range itself must hold.
        expect(`${key} “${end}”: ${reason}`).not.toContain('Try ');
      }
    }
  });

  describe.each(Object.entries(specs))('field %s', (key, spec) => {
    it('has a label, help in sentences and a place in the range', () => {
      expect(key).toMatch(/^[a-z][A-Za-z0-9]*$/u);
      expect(spec.label.trim()).not.toBe('');
      expect(spec.help).toMatch(/[.!?)]$/u);
      if (spec.kind === 'choice') {
        expect(Object.keys(spec.options).length).toBeGreaterThan(1);
      } else if (spec.kind === 'text') {
        expect(spec.longest).toBeGreaterThan(10);
        expect(spec.accepted.trim()).not.toBe('');
      } else {
        expect(spec.maximum).toBeGreaterThan(spec.minimum);
        expect(spec.accepted.trim()).not.toBe('');
      }
      if ((spec.kind === 'quantity' || spec.kind === 'optional-quantity') && spec.angleOf) {
        expect(Object.keys(specs)).toContain(spec.angleOf);
      }
    });

    it('accepts every entry that it offers as an example', () => {
      if (spec.kind === 'choice') return;
      for (const text of acceptedExamples(spec)) {
        const reason = evaluate(worksheet, { ...defaults, [key]: text }).messages[key] ?? '';
        expect(`“${text}”: ${reason}`).not.toContain('Try ');
      }
    });

    it(`answers or refuses each of ${hostileTexts.length} hostile texts cleanly`, () => {
      expect(hostileTexts.flatMap((text) => hostileFaults(worksheet, key, spec, text))).toEqual([]);
    });
  });
});
