import { describe, expect, test } from 'vitest';
import {
  CAUSE_WORDS,
  READING_WORDS,
  REFUSAL_WORDS,
} from '../../../../src/core/gate/recording/gate-words.ts';

const sentences = [
  ...Object.values(CAUSE_WORDS).flatMap(({ what, remedy }) => [what, remedy]),
  ...Object.values(REFUSAL_WORDS).flatMap(({ reason, remedy }) => [reason, remedy]),
  ...Object.values(READING_WORDS),
];

describe('the words of a reading', () => {
  test('are whole sentences, each said once', () => {
    expect(sentences.length).toBeGreaterThan(30);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/u);
    expect(new Set(sentences).size).toBe(sentences.length);
  });

  test('warn of the mains where the lamp is to be changed, and of the shutter', () => {
    expect(CAUSE_WORDS.lamp.remedy).toContain('qualified');
    expect(CAUSE_WORDS.unequal.remedy).toContain('mains plug');
  });
});
