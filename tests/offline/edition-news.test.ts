import { describe, expect, test } from 'vitest';
import {
  ASK_EDITIONS,
  askEditions,
  editionNews,
  readEditions,
  safetySentence,
} from '../../src/offline/edition-news.ts';

const editions = [
  { id: '2027-02-01', safetyPoints: 0 },
  { id: '2027-01-05', safetyPoints: 1 },
  { id: '2026-11-27', safetyPoints: 9 },
  { id: '2026-11-25', safetyPoints: 0 },
];

/** The side of a worker: what it was asked, and an answer if it gives one. */
function fakeWorker(answer?: unknown) {
  const asked: unknown[] = [];
  return {
    asked,
    postMessage(message: unknown, transfer?: unknown): void {
      asked.push(message);
      const [port] = transfer as readonly MessagePort[];
      if (answer !== undefined) port?.postMessage(answer);
    },
  };
}

describe('what a newer edition corrected', () => {
  test.each([
    ['2026-11-25', 10, '/editions/#edition-2026-11-27'],
    ['2026-11-27', 1, '/editions/#edition-2027-01-05'],
    ['2027-01-05', 0, '/editions/'],
    ['2027-02-01', 0, '/editions/'],
    // A page from before pages said which edition they are of has seen no correction at all.
    ['', 10, '/editions/#edition-2026-11-27'],
  ])('since the edition “%s” are %i points of safety', (readers, points, href) => {
    expect(editionNews(editions, readers)).toEqual({ safetyPoints: points, href });
    expect(editionNews(editions.toReversed(), readers)).toEqual({ safetyPoints: points, href });
  });

  test('is said in one sentence, and not at all when safety is not touched', () => {
    const sentence = (safetyPoints: number) => safetySentence({ safetyPoints, href: '' });
    expect(sentence(10)).toBe('This edition corrects 10 points of safety');
    expect(sentence(1)).toBe('This edition corrects 1 point of safety');
    expect(sentence(0)).toBe('');
  });
});

describe('asking the worker of the newer edition', () => {
  test('brings its editions', async () => {
    const worker = fakeWorker(editions);
    expect(await askEditions(worker)).toEqual(editions);
    expect(worker.asked).toEqual([{ type: ASK_EDITIONS }]);
  });

  test('brings nothing when it does not know the question', async () => {
    expect(await askEditions(fakeWorker(), 20)).toEqual([]);
  });

  test.each([
    ['words', 'none'],
    ['nothing', null],
    ['an object', { id: '2026-11-27', safetyPoints: 3 }],
    ['entries without a count', [{ id: '2026-11-27' }]],
    ['counts that are none', [{ id: '2026-11-27', safetyPoints: -1 }]],
    ['counts in words', [{ id: '2026-11-27', safetyPoints: '3' }]],
  ])('takes %s for no answer', (_what, message) => {
    expect(readEditions(message)).toEqual([]);
  });
});
