import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { triageReel } from '../../../src/core/reel/condition-triage.ts';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import { nitrateReasons } from '../../../src/core/reel/nitrate-suspicion.ts';
import type { ReelFindings } from '../../../src/core/reel/reel-findings.ts';
import { triageRuleLines } from '../../../src/core/reel/triage-card.ts';
import { TRIAGE_ORDER, type TriageVerdict } from '../../../src/core/reel/triage-rules.ts';
import { TRIAGE_STEPS } from '../../../src/core/reel/triage-steps.ts';
import { readSources } from '../../content/read-content.ts';

/** A Super 8 reel on which everything was looked at and found in order. */
const SOUND: ReelFindings = {
  base: 'acetate',
  gauge: 'super-8',
  year: 1974,
  shrinkagePercent: 0.1,
  acidLevel: 'level-0',
  smell: 'none',
  brittleness: 'supple',
  mould: 'none',
  perforations: 'none',
  splices: 'sound',
  warp: 'flat',
  deposit: 'none',
  stripe: 'none',
};

/** Values of each finding from best to worst; the first one is "good". */
const SCALES = {
  acidLevel: ['level-0', 'between-0-and-1', 'level-1', 'level-1.5', 'level-2', 'level-3'],
  brittleness: ['supple', 'stiff', 'cracks'],
  mould: ['none', 'dry-traces', 'active'],
  perforations: ['none', 'few', 'many'],
  splices: ['sound', 'doubtful', 'open'],
  warp: ['flat', 'slight', 'strong'],
  deposit: ['none', 'white-powder', 'sticky', 'brown-powder'],
  smell: ['none', 'vinegar', 'acrid-or-sweet'],
  stripe: ['none', 'striped', 'lifting'],
} as const;

/** The word for "nobody looked" of each finding. */
const NOT_LOOKED: Readonly<Record<keyof typeof SCALES, string>> = {
  acidLevel: 'not-tested',
  brittleness: 'not-tested',
  mould: 'not-noted',
  perforations: 'not-noted',
  splices: 'not-noted',
  warp: 'not-noted',
  deposit: 'not-noted',
  smell: 'not-noted',
  stripe: 'not-noted',
};
const KEYS = Object.keys(SCALES) as (keyof typeof SCALES)[];

function changed(findings: ReelFindings, changes: Readonly<Record<string, unknown>>): ReelFindings {
  return { ...findings, ...changes } as ReelFindings;
}

/** The same reel with one thing not looked at. */
function without(findings: ReelFindings, key: keyof ReelFindings): ReelFindings {
  return Object.fromEntries(
    Object.entries(findings).filter(([name]) => name !== key),
  ) as unknown as ReelFindings;
}

const anyFindings: fc.Arbitrary<ReelFindings> = fc
  .record({
    base: fc.constantFrom('not-noted', 'acetate', 'polyester', 'nitrate-suspected', 'unknown'),
    gauge: fc.constantFrom(
      'not-noted',
      '8mm-type-r',
      'super-8',
      '9.5mm',
      '16mm',
      'super-16',
      '35mm',
      'other',
    ),
    year: fc.option(fc.integer({ min: 1889, max: 2020 }), { nil: undefined }),
    shrinkagePercent: fc.option(fc.double({ min: -3, max: 12, noNaN: true }), { nil: undefined }),
    ...Object.fromEntries(
      // Good values are drawn more often, so that every verdict comes up.
      KEYS.map((key) => [
        key,
        fc.oneof(
          { weight: 3, arbitrary: fc.constant(SCALES[key][0]) },
          { weight: 2, arbitrary: fc.constantFrom(...SCALES[key], NOT_LOOKED[key]) },
        ),
      ]),
    ),
  })
  .map((drawn) => {
    const entries = Object.entries(drawn).filter(([, value]) => value !== undefined);
    return Object.fromEntries(entries) as unknown as ReelFindings;
  });

const rank = (verdict: TriageVerdict): number => TRIAGE_ORDER.indexOf(verdict);
const rankOf = (findings: ReelFindings): number => rank(triageReel(findings).verdict);
const verdictOf = (changes: Partial<ReelFindings>): TriageVerdict =>
  triageReel({ ...SOUND, ...changes }).verdict;

describe('triage of a reel', () => {
  test('lets a reel run on which everything was looked at and is sound', () => {
    expect(triageReel(SOUND)).toEqual({
      verdict: 'run',
      isNitrateSuspected: false,
      reasons: [],
      steps: [],
      notLookedAt: [],
    });
  });

  test.each<[Partial<ReelFindings>, TriageVerdict]>([
    [{ shrinkagePercent: 0.5 }, 'run-slowly'],
    [{ shrinkagePercent: 0.8 }, 'not-here'],
    [{ shrinkagePercent: 1.7 }, 'not-here'],
    [{ shrinkagePercent: 3 }, 'do-not-open'],
    [{ shrinkagePercent: 7 }, 'do-not-open'],
    [{ shrinkagePercent: 10 }, 'not-yet'],
    [{ shrinkagePercent: 40 }, 'not-yet'],
    [{ shrinkagePercent: -0.1 }, 'run'],
    [{ shrinkagePercent: -1.2 }, 'not-yet'],
    [{ base: 'polyester', shrinkagePercent: -1.2 }, 'not-yet'],
    [{ base: 'polyester', shrinkagePercent: 0.6 }, 'run'],
    [{ base: 'polyester', shrinkagePercent: 0.9 }, 'not-yet'],
    [{ acidLevel: 'between-0-and-1' }, 'run-slowly'],
    [{ acidLevel: 'level-1' }, 'run-slowly'],
    [{ acidLevel: 'level-1.5' }, 'run-slowly'],
    [{ acidLevel: 'level-2' }, 'not-here'],
    [{ acidLevel: 'level-3' }, 'do-not-open'],
    [{ base: 'polyester', acidLevel: 'level-1' }, 'not-yet'],
    [{ base: 'polyester', smell: 'vinegar' }, 'not-yet'],
    [{ base: 'polyester', brittleness: 'cracks' }, 'not-here'],
    [{ base: 'polyester', gauge: '16mm', year: 1932 }, 'not-yet'],
    [{ smell: 'vinegar' }, 'run-slowly'],
    [{ smell: 'acrid-or-sweet' }, 'not-yet'],
    [{ gauge: '16mm', smell: 'acrid-or-sweet' }, 'do-not-open'],
    [{ mould: 'dry-traces' }, 'run-slowly'],
    [{ mould: 'active' }, 'do-not-open'],
    [{ perforations: 'few' }, 'run-slowly'],
    [{ perforations: 'many' }, 'not-here'],
    [{ splices: 'open' }, 'not-yet'],
    [{ warp: 'strong' }, 'not-here'],
    [{ deposit: 'white-powder' }, 'not-here'],
    [{ deposit: 'sticky' }, 'do-not-open'],
    [{ deposit: 'brown-powder' }, 'do-not-open'],
    [{ stripe: 'striped' }, 'run'],
    [{ stripe: 'lifting' }, 'not-here'],
    [{ base: 'unknown' }, 'run-slowly'],
    [{ gauge: 'other', year: 1990 }, 'do-not-open'],
    [{ gauge: 'super-16', base: 'polyester' }, 'not-here'],
    [{ gauge: '35mm', base: 'polyester', year: 1995 }, 'not-here'],
    [{ gauge: '35mm', base: 'acetate', year: 1995 }, 'not-here'],
    [{ gauge: 'super-8', year: 1952 }, 'not-yet'],
    [{ gauge: '8mm-type-r', year: 1925 }, 'not-yet'],
    [{ base: 'polyester', acidLevel: 'not-tested' }, 'run'],
  ])('%o leads to %s', (changes, verdict) => {
    expect(verdictOf(changes)).toBe(verdict);
  });

  test('says that striped acetate that sours is to be copied now', () => {
    const reasons = (stripe: ReelFindings['stripe']): string =>
      triageReel({ ...SOUND, stripe, acidLevel: 'level-1' })
        .reasons.map(({ reason }) => reason)
        .join(' ');
    expect(reasons('striped')).toContain('copy it now');
    expect(reasons('none')).not.toContain('copy it now');
  });
});

describe('what was not looked at', () => {
  const UNSEEN = {
    gauge: 'not-noted',
    base: 'not-noted',
    smell: 'not-noted',
    deposit: 'not-noted',
    mould: 'not-noted',
    warp: 'not-noted',
    brittleness: 'not-tested',
    perforations: 'not-noted',
    splices: 'not-noted',
  } as const;

  test('counts against every base, polyester too', () => {
    for (const base of ['acetate', 'polyester', 'unknown'] as const) {
      for (const [key, value] of Object.entries(UNSEEN)) {
        const { verdict, steps } = triageReel(changed(SOUND, { base, [key]: value }));
        expect(`${base} ${key}: ${verdict}`).toBe(`${base} ${key}: not-yet`);
        expect(steps.map(({ id }) => id)).toContain(key);
      }
    }
  });

  test('is let off for polyester in acid and shrinkage alone', () => {
    for (const base of ['acetate', 'unknown', 'not-noted'] as const) {
      expect(verdictOf({ base, acidLevel: 'not-tested' })).toBe('not-yet');
      expect(triageReel(without({ ...SOUND, base }, 'shrinkagePercent')).verdict).toBe('not-yet');
    }
    const bare = without({ ...SOUND, base: 'polyester' }, 'shrinkagePercent');
    const { verdict, notLookedAt } = triageReel({ ...bare, acidLevel: 'not-tested' });
    expect(verdict).toBe('run');
    expect(notLookedAt).toEqual(['acidLevel', 'shrinkagePercent']);
  });

  test('never lets a reel run, whatever else was found', () => {
    let runs = 0;
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const isPolyester = findings.base === 'polyester';
        const matters = [
          ...Object.keys(UNSEEN).map((key) => findings[key as keyof ReelFindings]),
          ...(isPolyester ? [] : [findings.acidLevel, findings.shrinkagePercent]),
        ];
        const isUnseen = matters.some(
          (value) => value === undefined || value === 'not-noted' || value === 'not-tested',
        );
        const { verdict } = triageReel(findings);
        if (verdict === 'run') runs += 1;
        if (isUnseen) {
          expect(rank(verdict)).toBeGreaterThanOrEqual(rank('not-yet'));
        }
      }),
      { numRuns: 5000, seed: 8 },
    );
    expect(runs).toBeGreaterThan(0);
  });

  test('on a reel of which nothing is known leads through every point, safety first', () => {
    const nothing = changed({} as ReelFindings, {
      ...UNSEEN,
      acidLevel: 'not-tested',
      stripe: 'not-noted',
    });
    const { verdict, steps, notLookedAt } = triageReel(nothing);
    expect(verdict).toBe('not-yet');
    expect(steps.map(({ id }) => id)).toEqual([
      'gauge',
      'smell',
      'deposit',
      'mould',
      'warp',
      'base',
      'brittleness',
      'acid',
      'shrinkage',
      'perforations',
      'splices',
      'stripe',
    ]);
    expect(notLookedAt).toHaveLength(12);
  });

  test('gives steps for every “not yet”, in one order, and none for a reel that stays closed', () => {
    const order = TRIAGE_STEPS.map(({ id }) => id);
    fc.assert(
      fc.property(anyFindings, (findings) => {
        const { verdict, steps } = triageReel(findings);
        const places = steps.map(({ id }) => order.indexOf(id));
        expect(places).toEqual([...places].sort((a, b) => a - b));
        expect(new Set(places).size).toBe(places.length);
        if (verdict === 'not-yet') expect(steps.length).toBeGreaterThan(0);
        if (verdict === 'do-not-open' || verdict === 'run') expect(steps).toEqual([]);
      }),
      { numRuns: 2000, seed: 9 },
    );
  });
});

describe('one thing more', () => {
  test('never makes a verdict milder: a worse finding', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        for (const key of KEYS) {
          const ranks = SCALES[key].map((value) => rankOf(changed(findings, { [key]: value })));
          expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        }
      }),
    );
  });

  test('never makes a verdict milder: a good finding taken away', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        for (const key of KEYS) {
          const good = changed(findings, { [key]: SCALES[key][0] });
          const unseen = changed(findings, { [key]: NOT_LOOKED[key] });
          expect(rankOf(unseen)).toBeGreaterThanOrEqual(rankOf(good));
        }
        const measured = { ...findings, shrinkagePercent: 0.1 };
        const unmeasured = without(measured, 'shrinkagePercent');
        expect(rankOf(unmeasured)).toBeGreaterThanOrEqual(rankOf(measured));
        const named = { ...findings, gauge: '8mm-type-r', year: 1950 } as const;
        expect(rankOf({ ...named, gauge: 'not-noted' })).toBeGreaterThanOrEqual(rankOf(named));
      }),
    );
  });

  test('never makes a verdict milder: the base not looked at, on acetate', () => {
    fc.assert(
      fc.property(anyFindings, (findings) => {
        expect(rankOf({ ...findings, base: 'not-noted' })).toBeGreaterThanOrEqual(
          rankOf({ ...findings, base: 'acetate' }),
        );
      }),
    );
  });

  test('never makes a verdict milder: more shrinkage that can be', () => {
    fc.assert(
      fc.property(
        anyFindings,
        fc.double({ min: -0.3, max: 9.9, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (findings, shrinkagePercent, share) => {
          const more = shrinkagePercent + share * (9.99 - shrinkagePercent);
          expect(rankOf({ ...findings, shrinkagePercent: more })).toBeGreaterThanOrEqual(
            rankOf({ ...findings, shrinkagePercent }),
          );
        },
      ),
    );
  });

  test('gives the gravest of the reasons, which are sorted and have known sources', () => {
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
    [{ gauge: '16mm', smell: 'acrid-or-sweet' }, 1],
    [{ gauge: 'not-noted', smell: 'acrid-or-sweet' }, 1],
    [{ gauge: '9.5mm', deposit: 'brown-powder' }, 1],
    // Younger than nitrate: the smell is another one.
    [{ gauge: 'super-8', smell: 'acrid-or-sweet' }, 0],
    [{ gauge: 'super-16', deposit: 'brown-powder' }, 0],
    [{ gauge: '35mm', year: 1938 }, 1],
    [{ gauge: '35mm', year: 1951, base: 'unknown' }, 1],
    [{ gauge: '35mm', year: 1951, base: 'not-noted' }, 1],
    [{ gauge: '35mm', year: 1963, base: 'acetate' }, 1],
    [{ gauge: '35mm', year: 1964, base: 'acetate' }, 0],
    [{ gauge: '35mm', year: 1958, base: 'polyester' }, 0],
    // There was no polyester film yet, so the base was misjudged.
    [{ gauge: '35mm', year: 1938, base: 'polyester' }, 1],
    [{ gauge: '16mm', year: 1938 }, 0],
    [{ gauge: '9.5mm', year: 1925 }, 0],
    [{ gauge: 'other', year: 1930 }, 1],
    [{ gauge: '35mm', year: 1938, smell: 'acrid-or-sweet', deposit: 'brown-powder' }, 3],
  ])('%o gives %i reasons', (changes, count) => {
    expect(nitrateReasons({ ...SOUND, ...changes })).toHaveLength(count);
  });

  test('falls on 35 mm of unknown year', () => {
    const undated = without(SOUND, 'year');
    expect(nitrateReasons({ ...undated, gauge: '35mm' })).toHaveLength(1);
    expect(nitrateReasons({ ...undated, gauge: '35mm', base: 'polyester' })).toHaveLength(0);
  });

  test('refuses a year before film and one far ahead', () => {
    expect(() => nitrateReasons({ ...SOUND, year: 1850 })).toThrow(OutOfRangeError);
    expect(() => nitrateReasons({ ...SOUND, year: 2150 })).toThrow(OutOfRangeError);
  });
});

describe('the rule on one sheet', () => {
  test('has every verdict once, gravest first, and names no case', () => {
    const lines = triageRuleLines();
    expect(lines.map(({ verdict }) => verdict)).toEqual([...TRIAGE_ORDER].reverse());
    for (const { findings } of lines) {
      expect(findings.length).toBeGreaterThan(0);
      expect(new Set(findings).size).toBe(findings.length);
    }
    const notYet = lines.find(({ verdict }) => verdict === 'not-yet');
    expect(notYet?.findings.filter((finding) => /not (?:looked|tested)/u.test(finding))).toEqual([
      'anything but the stripe not looked at, tried, tested or measured',
    ]);
  });
});

describe('a reel that another workshop must run', () => {
  test('is not mended here: that is for whoever runs it', () => {
    const { verdict, steps } = triageReel({
      ...SOUND,
      shrinkagePercent: 0.9,
      perforations: 'few',
      splices: 'doubtful',
    });
    expect(verdict).toBe('not-here');
    expect(steps.map(({ id }) => id)).not.toContain('mend-perforations');
    expect(steps.map(({ id }) => id)).not.toContain('remake-splices');
  });
});
