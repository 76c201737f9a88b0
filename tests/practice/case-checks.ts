import { expect } from 'vitest';
import { CASE_LEVELS, type CaseLevel } from '../../src/practice/case-kind.ts';
import { drawCase, type DrawnCase } from '../../src/practice/draw-case.ts';
import type { CaseKindEntry } from '../../src/schemas/case-kind.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';

export function drawn(kind: CaseKindEntry, level: CaseLevel, seed: string): DrawnCase {
  return drawCase(kind, findWorksheet(kind.worksheet), level, seed);
}

/** Cases of a kind, of each level, for seeds from 1 on. */
export function* drawnCases(kind: CaseKindEntry, seeds: number): Generator<DrawnCase> {
  for (let seed = 1; seed <= seeds; seed += 1) {
    for (const level of CASE_LEVELS) yield drawn(kind, level, `seed ${seed}`);
  }
}

/** What holds for every case, whatever its kind. */
export function checkCase({ choices, told, kind, level, seed }: DrawnCase): void {
  const place = `${kind}, level ${level}, ${seed}`;
  const texts = choices.map(({ text }) => text);
  expect(new Set(texts).size, `${place}: two choices alike: ${texts.join(' | ')}`).toBe(
    texts.length,
  );
  expect(choices.filter(({ isRight }) => isRight).length, `${place}: right choices`).toBe(1);
  expect(choices.length, `${place}: choices`).toBeGreaterThanOrEqual(2);
  for (const { text, reason, isRight } of choices) {
    expect(`${text}${reason}`, place).not.toMatch(/NaN|undefined|Infinity/u);
    // A wrong choice is refused and named: it says what the slip was, or what it would take.
    if (!isRight) expect(reason.length, `${place}: ${text}`).toBeGreaterThan(12);
  }
  expect(told.length, place).toBeGreaterThan(0);
  for (const { label, text } of told) expect(`${label}: ${text}`, place).not.toMatch(/: (?:–)?$/u);
}

/** Words of a choice that lets a film into the machine. */
export const RUNS =
  /^(?:Run it|Slowly|Slightly shrunk|As far as the acid goes|No more shrunk|Thread)/u;

const looked = new Map<string, ReadonlySet<string>>([
  ['gauge', new Set(['not looked at', 'none of these, or cannot be told', '35 mm', 'Super 16'])],
  ['Smell', new Set(['not noticed yet', 'sharp, or sweet, not vinegar'])],
  [
    'Powder and sticking',
    new Set([
      'not looked at',
      'white powder or crystals',
      'layers stick together',
      'brown powder, bubbles or honey-like drops',
    ]),
  ],
  ['Mould', new Set(['not looked at', 'furry or damp'])],
  ['Flatness', new Set(['not looked at', 'strongly curled, warped or spoked'])],
  ['Base', new Set(['not looked at', 'nitrate is suspected'])],
  ['Bends', new Set(['not tried', 'cracks'])],
  ['Perforations', new Set(['not looked at', 'many torn'])],
  ['Splices', new Set(['not looked at', 'coming apart'])],
  ['Magnetic stripe', new Set(['striped, and it lifts'])],
]);

/**
 * Why a reel, as it is told to the trainee, must not go into the machine at all. Written from the
 * table “What each finding decides” and the sentences under it, not from the code.
 */
export function mustNotRun(told: DrawnCase['told']): readonly string[] {
  const said = new Map(told.map(({ label, text }) => [label, text]));
  const reasons: string[] = [];
  for (const [label, bad] of looked) {
    const key = label === 'gauge' ? 'Gauge' : label;
    if (bad.has(said.get(key) ?? '')) reasons.push(`${key}: ${said.get(key)}`);
  }
  const isPolyester = said.get('Base')?.startsWith('polyester') === true;
  const acid = said.get('Acid level');
  if (acid === 'level 2' || acid === 'level 3') reasons.push(`acid ${acid}`);
  if (acid === 'not tested' && !isPolyester) reasons.push('acid not tested');
  const shrinkage = said.get('Shrinkage, at most');
  if (shrinkage !== undefined) {
    const percent = Number.parseFloat(shrinkage);
    if (Number.isNaN(percent)) {
      if (!isPolyester) reasons.push('shrinkage not measured');
    } else if (percent < -0.3 || percent >= 0.8) reasons.push(`shrinkage ${shrinkage}`);
  }
  const year = Number(said.get('Year'));
  if (Number.isFinite(year)) {
    const first = { 'Standard 8': 1932, 'Super 8': 1965, '9.5 mm': 1922, '16 mm': 1923 }[
      said.get('Gauge') ?? ''
    ];
    if (first !== undefined && year < first) reasons.push(`older than its gauge: ${year}`);
    if (isPolyester && year < 1955) reasons.push('polyester before 1955');
  }
  if (isPolyester && (said.get('Smell') === 'vinegar' || /[123]/u.test(acid ?? ''))) {
    reasons.push('sour polyester');
  }
  return reasons;
}

/** Points of a told reel that nobody looked at, tried, tested or measured. */
export const untested = (told: DrawnCase['told']): readonly string[] =>
  told
    .filter(
      ({ label, text }) =>
        label !== 'Year' && /^not (?:looked|noticed|tried|tested|measured)/u.test(text),
    )
    .map(({ label }) => label);

/** No case has a right answer that is unsafe. */
export function checkSafety({ choices, told, kind, level, seed }: DrawnCase): void {
  const right = choices.find(({ isRight }) => isRight);
  if (right === undefined || !RUNS.test(right.text)) return;
  const place = `${kind}, level ${level}, ${seed}: “${right.text}”`;
  if (right.text.startsWith('Run it.')) expect(untested(told), place).toEqual([]);
  expect(mustNotRun(told), place).toEqual([]);
  expect(right.text, place).not.toMatch(/^(?:Thread|Run it once)/u);
}
