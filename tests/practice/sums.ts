import { expect } from 'vitest';
import type { Practice } from '../../src/schemas/practice.ts';
import { UNITS } from '../../src/quantity/units.ts';
import { bareUnit, drawProblem, judge } from '../../src/ui/practice/practice-problem.ts';
import { findWorksheet } from '../../src/worksheets/registry.ts';
import { seededChance } from '../../src/practice/chance.ts';

/** A figure in the ways in which people write it, each close to it. */
function notations(value: number): readonly string[] {
  const plain = value.toFixed(9).replace(/\.?0+$/u, '');
  const written = [plain, plain.replace('.', ','), ` ${plain} `];
  if (value < 0) written.push(plain.replace('-', '\u2212'));
  return written.filter((text) => text.trim() !== '' && text.trim() !== '-0');
}

/** Which slips of a kind were named, over many draws; everything else is checked on the way. */
export function checkSums(kind: Practice, seeds: number): ReadonlySet<string> {
  const worksheet = findWorksheet(kind.worksheet);
  const unit = UNITS[kind.unit as keyof typeof UNITS];
  const perBare = unit.factor / UNITS[bareUnit(kind)].factor;
  const named = new Set<string>();
  for (let seed = 1; seed <= seeds; seed += 1) {
    const problem = drawProblem(kind, worksheet, seededChance(`${kind.id} ${seed}`));
    const place = `${kind.id}, seed ${seed}`;
    const { value, text } = problem.answer;
    for (const typed of [text, ...notations(value * perBare)]) {
      expect(judge(kind, problem, typed), `${place}: “${typed}”`).toEqual({ kind: 'right' });
    }
    const symbol = UNITS[bareUnit(kind)].symbol;
    if (symbol !== '') {
      const typed = `${notations(value * perBare)[0]} ${symbol}`;
      expect(judge(kind, problem, typed), `${place}: “${typed}”`).toEqual({ kind: 'right' });
    }
    for (const slip of problem.slips) {
      const typed = (slip.value * perBare).toFixed(9);
      const judged = judge(kind, problem, typed);
      expect(judged.kind, `${place}: “${typed}” (${slip.words})`).toBe('wrong');
      if (judged.kind === 'wrong') named.add(judged.slip ?? '');
    }
    // Rounded as the working shows it, a result is accepted.
    const shown = problem.working.at(-1)?.sum?.split('=').at(-1)?.trim();
    if (shown !== undefined && shown === text) {
      expect(judge(kind, problem, shown), place).toEqual({ kind: 'right' });
    }
  }
  return named;
}
