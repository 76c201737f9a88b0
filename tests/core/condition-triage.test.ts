import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TRIAGE_ORDER, triageReel, type TriageVerdict } from '../../src/core/condition-triage.ts';
import { OutOfRangeError } from '../../src/core/errors.ts';
import { nitrateReasons } from '../../src/core/nitrate-suspicion.ts';
import type { ReelFindings } from '../../src/core/reel-findings.ts';
import { readSources } from '../content/read-content.ts';

/** A Super 8 reel on which everything was looked at and found in order. */
const SOUND: ReelFindings = {
  base: 'acetate',
  gauge: 'super-8',
  year: 1974,
  shrinkagePercent: 0.1,
  acidLevel: '0',
  smell: 'none',
  brittleness: 'supple',
  mould: 'none',
  perforations: 'none',
  splices: 'sound',
  warp: 'flat',
  deposit: 'none',
};

/** Values of each finding from best to worst; "not looked at" stands where its verdict belongs. */
const SCALES = {
  acidLevel: ['0', '1', '1.5', '2', '3'],
  brittleness: ['supple', 'stiff', 'cracks'],
  mould: ['none', 'dry-traces', 'active'],
  perforations: ['none', 'few', 'many'],
  splices: ['sound', 'doubtful', 'open'],
  warp: ['flat', 'slight', 'strong'],
  deposit: ['none', 'white-powder', 'sticky', 'brown-powder'],
  smell: ['none', 'vinegar', 'acrid-or-sweet'],
} as const;

const { shrinkagePercent: soundShrinkage, year: soundYear, ...plain } = SOUND;
const anyFindings: fc.Arbitrary<ReelFindings> = fc
  .record({
    base: fc.constantFrom<ReelFindings['base']>(
      'acetate',
      'polyester',
      'nitrate-suspected',
      'unknown',
    ),
    gauge: fc.constantFrom<ReelFindings['gauge']>(
      '8mm-type-r',
      'super-8',
      '9.5mm',
      '16mm',
      'super-16',
      '35mm',
      'other',
    ),
    year: fc.option(fc.integer({ min: 1889, max: 2020 }), { nil: undefined }),
    shrinkagePercent: fc.option(fc.double({ min: -1, max: 4, noNaN: true }), { nil: undefined }),
    acidLevel: fc.constantFrom<ReelFindings['acidLevel']>('not-tested', '0', '1', '1.5', '2', '3'),
    smell: fc.constantFrom<ReelFindings['smell']>('none', 'vinegar', 'acrid-or-sweet', 'not-noted'),
    brittleness: fc.constantFrom<ReelFindings['brittleness']>(
      'supple',
      'stiff',
      'cracks',
      'not-tested',
    ),
    mould: fc.constantFrom<ReelFindings['mould']>('none', 'dry-traces', 'active', 'not-noted'),
    perforations: fc.constantFrom<ReelFindings['perforations']>('none', 'few', 'many', 'not-noted'),
    splices: fc.constantFrom<ReelFindings['splices']>('sound', 'doubtful', 'open', 'not-noted'),
    warp: fc.constantFrom<ReelFindings['warp']>('flat', 'slight', 'strong', 'not-noted'),
    deposit: fc.constantFrom<ReelFindings['deposit']>(
      'none',
      'white-powder',
      'sticky',
      'brown-powder',
      'not-noted',
    ),
  })
  .map(({ year, shrinkagePercent, ...rest }) => ({
    ...rest,
    ...(year === undefined ? {} : { year }),
    ...(shrinkagePercent === undefined ? {} : { shrinkagePercent }),
  }));

const rank = (verdict: TriageVerdict): number => TRIAGE_ORDER.indexOf(verdict);
const verdictOf = (changes: Partial<ReelFindings>): TriageVerdict =>
  triageReel({ ...SOUND, ...changes }).verdict;

describe('triage of a reel', () => {
  test('lets a reel run on which everything was looked at and is sound', () => {
    const triage = triageReel(SOUND);
    expect(triage).toEqual({ verdict: 'run', isNitrateSuspected: false, reasons: [] });
    expect(soundShrinkage).toBeLessThan(0.3);
    expect(soundYear).toBe(1974);
  });

  test.each<[Partial<ReelFindings>, TriageVerdict]>([
    [{ shrinkagePercent: 0.5 }, 'run-slowly'],
    [{ shrinkagePercent: 0.8 }, 'no-claw'],
    [{ shrinkagePercent: 1.7 }, 'no-claw'],
    [{ shrinkagePercent: 3 }, 'do-not-open'],
    [{ acidLevel: '1' }, 'run-slowly'],
    [{ acidLevel: '1.5' }, 'run-slowly'],
    [{ acidLevel: '2' }, 'no-claw'],
    [{ acidLevel: '3' }, 'do-not-open'],
    [{ smell: 'vinegar' }, 'run-slowly'],
    [{ mould: 'dry-traces' }, 'run-slowly'],
    [{ mould: 'active' }, 'do-not-open'],
    [{ perforations: 'few' }, 'run-slowly'],
    [{ perforations: 'many' }, 'no-claw'],
    [{ splices: 'open' }, 'no-claw'],
    [{ warp: 'strong' }, 'no-claw'],
    [{ deposit: 'white-powder' }, 'no-claw'],
    [{ deposit: 'sticky' }, 'do-not-open'],
    [{ base: 'unknown' }, 'run-slowly'],
    [{ gauge: 'other', year: 1990 }, 'do-not-open'],
    [{ base: 'polyester', acidLevel: 'not-tested' }, 'run'],
  ])('%o leads to %s', (changes, verdict) => {
    expect(verdictOf(changes)).toBe(verdict);
  });

  test('is never free where something was not looked at', () => {
    for (const changes of [
      { smell: 'not-noted', acidLevel: 'not-tested' },
      { brittleness: 'not-tested' },
      { mould: 'not-noted' },
      { perforations: 'not-noted' },
      { splices: 'not-noted' },
      { warp: 'not-noted' },
      { deposit: 'not-noted' },
    ] as const) {
      expect(verdictOf(changes)).toBe('run-slowly');
    }
    expect(triageReel({ ...plain, year: 1974 }).verdict).toBe('run-slowly');
    expect(triageReel({ ...plain, base: 'polyester' }).verdict).toBe('run');
  });

  test('never grows milder when one finding grows worse', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        for (const [key, scale] of Object.entries(SCALES)) {
          const ranks = scale.map((value) =>
            rank(triageReel({ ...findings, [key]: value } as ReelFindings).verdict),
          );
          expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        }
      }),
    );
  });

  test('never grows milder as shrinkage grows', () => {
    fc.assert(
      fc.property(
        anyFindings,
        fc.double({ min: -1, max: 5, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (findings, shrinkagePercent, more) => {
          const less = triageReel({ ...findings, shrinkagePercent });
          const greater = triageReel({ ...findings, shrinkagePercent: shrinkagePercent + more });
          expect(rank(greater.verdict)).toBeGreaterThanOrEqual(rank(less.verdict));
        },
      ),
    );
  });

  test('is the gravest of its reasons, which are sorted and have known sources', () => {
    const known = new Set(readSources().map(({ id }) => id));
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const { verdict, reasons } = triageReel(findings);
        const ranks = reasons.map((reason) => rank(reason.verdict));
        expect(rank(verdict)).toBe(Math.max(0, ...ranks));
        expect(ranks).toEqual([...ranks].sort((a, b) => b - a));
        for (const { sources, reason } of reasons) {
          expect(reason).not.toBe('');
          expect(sources.length).toBeGreaterThan(0);
          expect(sources.filter((id) => !known.has(id))).toEqual([]);
        }
      }),
    );
  });
});

describe('suspicion of nitrate', () => {
  test('always wins', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const triage = triageReel(findings);
        const suspicion = nitrateReasons(findings);
        expect(triage.isNitrateSuspected).toBe(suspicion.length > 0);
        if (suspicion.length > 0) {
          expect(triage.verdict).toBe('do-not-open');
          expect(triage.reasons[0]?.reason).toBe(suspicion[0]?.reason);
        }
      }),
    );
  });

  test.each<[Partial<ReelFindings>, number]>([
    [{ base: 'nitrate-suspected' }, 1],
    [{ smell: 'acrid-or-sweet' }, 1],
    [{ deposit: 'brown-powder' }, 1],
    [{ gauge: '35mm', year: 1938 }, 1],
    [{ gauge: '35mm', year: 1951, base: 'unknown' }, 1],
    [{ gauge: '35mm', year: 1963, base: 'acetate' }, 1],
    [{ gauge: '35mm', year: 1964, base: 'acetate' }, 0],
    [{ gauge: '35mm', year: 1938, base: 'polyester' }, 0],
    [{ gauge: '16mm', year: 1938 }, 0],
    [{ gauge: '9.5mm', year: 1925 }, 0],
    [{ gauge: 'other', year: 1930 }, 1],
    [{ gauge: '35mm', year: 1938, smell: 'acrid-or-sweet', deposit: 'brown-powder' }, 3],
  ])('%o gives %i reasons', (changes, count) => {
    expect(nitrateReasons({ ...SOUND, ...changes })).toHaveLength(count);
  });

  test('falls on 35 mm of unknown year', () => {
    expect(nitrateReasons({ ...plain, gauge: '35mm' })).toHaveLength(1);
    expect(nitrateReasons({ ...plain, gauge: '35mm', base: 'polyester' })).toHaveLength(0);
  });

  test('refuses a year before film and one far ahead', () => {
    expect(() => nitrateReasons({ ...SOUND, year: 1850 })).toThrow(OutOfRangeError);
    expect(() => nitrateReasons({ ...SOUND, year: 2150 })).toThrow(OutOfRangeError);
  });
});
