import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reelFileName } from '../../../src/core/job/reel-file-name.ts';

const parts = { job: '2026-014', reel: 'r007', date: '1974-08', title: 'Regatta' } as const;
const name = (changes: Partial<Record<keyof typeof parts, string>>): string =>
  reelFileName({ ...parts, ...changes, take: 1, kind: 'master' });

describe('the name of a file of a reel', () => {
  it('says job, reel, date, title, take and kind', () => {
    expect(name({})).toBe('j2026-014-r007a_1974-08_regatta_t01_master');
    expect(name({ title: 'Regatta am Fluß, Über Wasser' })).toBe(
      'j2026-014-r007a_1974-08_regatta-am-fluss-ueber-w_t01_master',
    );
    expect(name({ title: '運動会', date: '' })).toBe('j2026-014-r007a_undated_untitled_t01_master');
    expect(name({ title: 'Été à Sète' })).toContain('_ete-a-sete_');
  });

  it('is safe on every disk and never the same for two reels', () => {
    const seen = new Map<string, string>();
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 999 }), (title, reel) => {
        const given = name({ title, reel: `r${reel}` });
        expect(given).toMatch(/^[a-z0-9][a-z0-9_-]*$/u);
        expect(given.length).toBeLessThanOrEqual(70);
        const number = String(reel);
        expect(seen.get(given) ?? number).toBe(number);
        seen.set(given, number);
      }),
      { numRuns: 2000 },
    );
  });

  it('tells rolls of one reel apart, and takes nothing else for a roll', () => {
    const keys = ['r007', 'r007b', 'R 7 c', '7B', 'r 12 a', '7 reels', 'r007bis', 'Z', ''].map(
      (reel) => name({ reel }).split('_')[0],
    );
    expect(keys).toEqual([
      'j2026-014-r007a',
      'j2026-014-r007b',
      'j2026-014-r007c',
      'j2026-014-r007b',
      'j2026-014-r012a',
      'j2026-014-r007a',
      'j2026-014-r007a',
      'j2026-014-rza',
      'j2026-014-r000a',
    ]);
  });

  it('sorts by reel whatever the title says', () => {
    const names = [1, 2, 10, 500].map((reel) => name({ reel: `${reel}`, title: `z${600 - reel}` }));
    expect(names.toSorted()).toEqual(names);
  });
});
