import { describe, expect, test } from 'vitest';
import { worksheet as triage } from '../../src/worksheets/reel/condition-triage/worksheet.ts';
import { evaluate, fillEntries } from '../../src/worksheets/machine/evaluate.ts';
import { readChapters } from '../content/read-content.ts';

// The chapter's own table decides here, by rules written in this file. Nothing of the core is used: a
// reel is described in the words of the chapter, and the sheet must give the answer of the chapter.

const ANSWERS = ['run', 'run slowly', 'not yet', 'not on this bench', 'do not open'] as const;
type Answer = (typeof ANSWERS)[number];

/** What the sheet prints for each answer of the table. */
const PRINTED: Readonly<Record<Answer, string>> = {
  run: 'run',
  'run slowly': 'run slowly, with care',
  'not yet': 'not yet: do this first',
  'not on this bench': 'not on this bench',
  'do not open': 'do not open or run, refer to a specialist',
};

function isAnswer(text: string): text is Answer {
  return (ANSWERS as readonly string[]).includes(text);
}

const body = (readChapters().find(({ id }) => id === 'reel/condition')?.body ?? '').replaceAll(
  '\u00a0',
  ' ',
);

/** The table “What each finding decides”: finding → what was found, in words → answer. */
function readTable(): ReadonlyMap<string, ReadonlyMap<string, Answer>> {
  const section = body.split('### What each finding decides')[1]?.split('\n#')[0] ?? '';
  const rows = section
    .split('\n')
    .filter((line) => line.startsWith('| ') && line.includes('→'))
    .map((line) =>
      line
        .replaceAll(/<Source[^>]*>/gu, '')
        .split('|')
        .map((cell) => cell.trim()),
    );
  return new Map(
    rows.map(([, finding = '', cell = '']) => [
      finding,
      new Map(
        cell.split('<br />').map((part) => {
          const [words = '', answer = ''] = part.split('→').map((text) => text.trim());
          if (!isAnswer(answer)) throw new Error(`${finding}: “${part}” has no known answer`);
          return [words, answer] as const;
        }),
      ),
    ]),
  );
}

const table = readTable();
const specs = triage.inputs;

/** Reel as a person would describe it: words of the table by finding; numbers apart. */
interface DescribedReel {
  readonly words: Readonly<Record<string, string>>;
  readonly shrinkage: number | undefined;
  readonly year: number | undefined;
}

/** Words of the shrinkage row for a number, read off its printed limits. */
function shrinkageWords(shrinkage: number | undefined): string {
  if (shrinkage === undefined) return 'not measured';
  if (shrinkage < -0.3 || shrinkage >= 10) return 'less than −0.3 %, or 10 % and more';
  if (shrinkage < 0.3) return 'below 0.3 %';
  if (shrinkage < 0.8) return '0.3 % to below 0.8 %';
  return shrinkage < 2.5 ? '0.8 % to below 2.5 %' : '2.5 % to below 10 %';
}

const worst = (answers: readonly Answer[]): Answer =>
  ANSWERS[Math.max(...answers.map((answer) => ANSWERS.indexOf(answer)))] ?? 'run';

/** The answer of the chapter: the table, and below it “some findings change each other”. */
function answerOfChapter({ words, shrinkage, year }: DescribedReel): Answer {
  const isPolyester = words['Base'] === 'polyester, proved with a polariser';
  const gauge = words['Gauge'] ?? '';
  const isYoung = gauge === 'Super 8' || gauge === 'Super 16';
  const isSharp = words['Smell'] === 'sharp, or sweet, not vinegar';
  const answers: Answer[] = [];
  for (const [finding, row] of table) {
    let found =
      finding === 'Shrinkage, at most' ? shrinkageWords(shrinkage) : (words[finding] ?? '');
    if (isPolyester && finding === 'Acid level' && found === 'not tested') continue;
    if (isPolyester && finding === 'Shrinkage, at most' && !found.startsWith('less than')) continue;
    if (finding === 'Smell' && isSharp && isYoung) {
      answers.push('not yet');
      found = 'none, or of old film';
    }
    const answer = row.get(found);
    if (answer === undefined) throw new Error(`${finding}: the chapter does not know “${found}”`);
    answers.push(answer);
  }
  const level = words['Acid level'];
  const isUnlikePolyester =
    words['Smell'] === 'vinegar' ||
    (level !== 'not tested' && level !== 'level 0') ||
    words['Bends'] === 'cracks' ||
    (shrinkage !== undefined && shrinkage >= 0.8) ||
    (year !== undefined && year < 1955);
  if (isPolyester && isUnlikePolyester) answers.push('not yet');
  const firstYears: Readonly<Record<string, number>> = {
    '9.5 mm': 1922,
    '16 mm': 1923,
    'Standard 8': 1932,
    'Super 8': 1965,
  };
  if (year !== undefined && year < (firstYears[gauge] ?? 0)) answers.push('not yet');
  const isWide = gauge === '35 mm' || gauge === 'none of these, or cannot be told';
  const clearsNitrate = isPolyester && (year === undefined || year >= 1955);
  if (isWide && !clearsNitrate && (year === undefined || year <= 1963)) answers.push('do not open');
  return worst(answers);
}

/** A small seeded generator, so that the 300 reels are the same on every machine. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** 300 reels, most findings good on each, so that single bad and missing ones decide. */
function describedReels(count: number): readonly DescribedReel[] {
  const random = seeded(1974);
  const oneOf = <Item>(items: readonly Item[]): Item => items[Math.floor(random() * items.length)]!;
  return Array.from({ length: count }, () => {
    const goodShare = oneOf([0.6, 0.9, 0.97]);
    const words = Object.fromEntries(
      [...table]
        .filter(([finding]) => finding !== 'Shrinkage, at most')
        .map(([finding, row]) => {
          const good = [...row].filter(([, answer]) => answer === 'run').map(([found]) => found);
          const seen = good.filter((found) => found !== 'not looked at');
          return [finding, random() < goodShare ? oneOf(seen) : oneOf([...row.keys()])];
        }),
    );
    const shrinkage =
      random() < goodShare
        ? 0.2
        : oneOf([undefined, -1.2, -0.3, -0.1, 0.29, 0.3, 0.79, 0.8, 2.49, 2.5, 9.9, 10, 40]);
    const year = oneOf([
      undefined,
      1912,
      1927,
      1936,
      1951,
      1958,
      1963,
      1964,
      1974,
      1974,
      1974,
      1995,
    ]);
    return { words, shrinkage, year };
  });
}

/** The keys of the sheet for a reel in words. */
function entriesOf({ words, shrinkage, year }: DescribedReel): Record<string, string> {
  const entries: Record<string, string> = {
    shrinkagePercent: shrinkage === undefined ? '' : String(shrinkage),
    year: year === undefined ? '' : String(year),
  };
  for (const [key, spec] of Object.entries(specs)) {
    if (spec.kind !== 'choice') continue;
    const option = Object.entries(spec.options).find(([, label]) => label === words[spec.label]);
    if (option === undefined) throw new Error(`no option “${words[spec.label] ?? ''}” for ${key}`);
    entries[key] = option[0];
  }
  return entries;
}

const printed = (reel: DescribedReel): string =>
  evaluate(triage, fillEntries(specs, entriesOf(reel))).outcome?.answers['verdict']?.text ?? '';

describe('the table of the condition chapter', () => {
  test('has a row for each finding of the sheet, with each choice in its words', () => {
    for (const spec of Object.values(specs)) {
      if (spec.label === 'Year') continue;
      const row = table.get(spec.label);
      expect(row, spec.label).toBeDefined();
      if (spec.kind === 'choice') {
        expect(new Set(row?.keys())).toEqual(new Set(Object.values(spec.options)));
      }
    }
    expect(table.size).toBe(Object.keys(specs).length - 1);
  });

  test('lists the five answers of the sheet in the words of the sheet', () => {
    const list = body.split('Triage has five answers')[1]?.split('There is no sixth')[0] ?? '';
    const names = Object.values(PRINTED).map((name) => name.replace(', refer to a specialist', ''));
    for (const name of names) expect(list).toContain(`| ${name} |`);
  });

  test('and the sheet agree on 300 described reels', () => {
    const reels = describedReels(300);
    const wrong = reels.flatMap((reel) => {
      const expected = PRINTED[answerOfChapter(reel)];
      const given = printed(reel);
      return given === expected ? [] : [{ reel, expected, given }];
    });
    expect(wrong.slice(0, 3)).toEqual([]);
  });

  test('leads to each of the five answers among them, with none of a reel that nobody looked at', () => {
    const reels = describedReels(300);
    const counts = new Map<Answer, number>();
    for (const reel of reels) {
      const answer = answerOfChapter(reel);
      counts.set(answer, (counts.get(answer) ?? 0) + 1);
    }
    for (const answer of ANSWERS) expect(counts.get(answer) ?? 0, answer).toBeGreaterThanOrEqual(8);
    const nothing = evaluate(triage, fillEntries(specs, {})).outcome;
    expect(nothing?.answers['verdict']?.text).toBe(PRINTED['not yet']);
  });
});
