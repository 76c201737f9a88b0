import { expect, it } from 'vitest';
import { evaluate, type Entries } from '../../src/worksheets/machine/evaluate.ts';
import { worksheets } from '../../src/worksheets/registry.ts';
import { sizeOf } from '../tools/sample-sizes.ts';
import { knownEntries, seededChance, seedOf } from './random-entries.ts';
import { levelsReached, plainSpaces, reachingCases } from './reaching-cases.ts';

/** A refusal without its numbers and its example. */
function shapeOf(text: string): string {
  return plainSpaces(text)
    .replace(/ An entry looks like .*$/u, '')
    .replaceAll(/−?\d[\d ./]*\d|\d/gu, '#');
}

it('no level or refusal turns up in random entries that is not reached above', () => {
  const reached = levelsReached(worksheets, evaluate);
  const refused = new Set(
    reachingCases.flatMap(({ id, refuses = {} }) =>
      Object.entries(refuses).map(([key, text]) => `${id} refuses ${key}: ${shapeOf(text)}`),
    ),
  );
  const missing = new Map<string, Entries>();
  for (const [id, worksheet] of worksheets) {
    const chance = seededChance(seedOf(`${id} levels`));
    for (let round = 0; round < sizeOf('said'); round += 1) {
      const { entries } = knownEntries(worksheet.inputs, chance);
      const { outcome, messages, message } = evaluate(worksheet, entries);
      const level = outcome?.verdict.level;
      if (level !== undefined && !reached.get(id)?.has(level))
        missing.set(`${id} says ${level}`, entries);
      for (const [key, text] of Object.entries({ ...messages, ...(message && { message }) })) {
        // A text that a field cannot read has its own tests; this one is about numbers that do not fit.
        if (!text.startsWith('Expected ')) continue;
        const refusal = `${id} refuses ${key}: ${shapeOf(text)}`;
        if (!refused.has(refusal)) missing.set(refusal, entries);
      }
    }
  }
  expect([...missing]).toEqual([]);
});
