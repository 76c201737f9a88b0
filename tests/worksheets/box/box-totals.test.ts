import { describe, expect, it } from 'vitest';
import { boxTotals } from '../../../src/worksheets/box/box-totals.ts';
import type { Job, ReelTexts } from '../../../src/worksheets/box/job.ts';
import {
  fieldMessage,
  judgedReel,
  reelBalance,
  isNumberItsOwn,
  reelFacts,
} from '../../../src/worksheets/box/reel-reading.ts';
import { REEL_FIELDS } from '../../../src/worksheets/box/reel-fields.ts';
import { whatStops } from '../../../src/core/job/reel-states.ts';
import { makeJob, makeReel } from '../../ui/box/some-box.ts';

/** The twelve reels of the rowing club, as the customer put them on the counter. */
const twelve: readonly ReelTexts[] = [
  { gauge: 'Super 8', size: '50 ft', nativeFps: '18' },
  { gauge: 'Super 8', size: '50 ft', nativeFps: '18' },
  { gauge: 'Super 8', size: '50 ft', nativeFps: '18' },
  { gauge: 'Super 8', size: '200 ft', nativeFps: '18' },
  { gauge: 'Super 8', size: '200 ft', nativeFps: '18' },
  { gauge: 'Super 8', size: '400 ft', nativeFps: '18' },
  // The measured length holds, not the size of the reel.
  { gauge: 'Super 8', size: '200 ft', lengthMetres: '60.96 m', nativeFps: '24', sound: 'magnetic' },
  { gauge: 'Standard 8', size: '50 ft', nativeFps: '16' },
  { gauge: '9.5 mm', lengthMetres: '30', nativeFps: '16' },
  { gauge: '16 mm', size: '100 ft', nativeFps: '24' },
  // No native rate: no time. No gauge: in no sum.
  { gauge: '16 mm', size: '100 ft' },
  { size: '50 ft', nativeFps: '18' },
];
const job: Job = {
  ...makeJob(twelve.map((texts, index) => makeReel(index + 1, texts))),
  texts: { recordingMegabits: '100', viewingMegabits: '20 Mbit/s', carrierCount: '2' },
};
const bench = {
  'times.handlingSeconds': '15',
  'times.afterWorkSeconds': '20 min',
  'times.repeatPercent': '0',
  'prices.perReel': '4.00',
  'prices.perMinute': '1.20',
  'prices.minuteRule': 'begun',
  'prices.carrier': '9',
  'prices.fixed': '10',
  'prices.taxPercent': '19',
} as const;

describe('the totals of a box', () => {
  // By hand: feet × frames to the foot (Super 8 72, Standard 8 80, 16 mm 40). 9.5 mm has a step near
  // 7.6 mm, about 40 frames to the foot; its own count is checked within 2 %.
  const nineFrames = (30_000 / 304.8) * 40;
  const super8Frames = (3 * 50 + 2 * 200 + 400) * 72;
  const soundFrames = 200 * 72;

  it('add up length, frames and time of what is known, and count what is not', () => {
    const totals = boxTotals(job, {});
    expect(totals.reelCount).toBe(12);
    const metres = (3 * 50 + 2 * 200 + 400 + 200 + 50 + 100 + 100) * 0.3048 + 30;
    expect(totals.lengthMetres).toBeCloseTo(metres, 9);
    const known = super8Frames + soundFrames + 50 * 80 + 2 * 100 * 40;
    expect(totals.frames - known).toBeGreaterThan(nineFrames * 0.99);
    expect(totals.frames - known).toBeLessThan(nineFrames * 1.02);
    const nine = totals.frames - known;
    const seconds =
      super8Frames / 18 + soundFrames / 24 + (50 * 80) / 16 + nine / 16 + (100 * 40) / 24;
    expect(totals.runningSeconds).toBeCloseTo(seconds, 0);
    expect([totals.uncountedReels, totals.unmeasuredReels, totals.ratelessReels]).toEqual([
      1, 9, 1,
    ]);
    expect(totals.bytes).toBeCloseTo((totals.runningSeconds * 120e6) / 8, 0);
    expect(totals.quotation).toBeUndefined();
    expect(totals.plannedSeconds).toBeUndefined();
  });

  it('price by the own list and plan by the own times of the bench', () => {
    const totals = boxTotals(job, bench);
    // Begun minutes: 3 × 4 (3:20), 2 × 14 (13:20), 27 (26:40), 10, 5 (4:10), 9.5 mm 5, 16 mm 3 (2:47).
    const minutes = 3 * 4 + 2 * 14 + 27 + 10 + 5 + 5 + 3;
    const net = 12 * 400 + minutes * 120 + 2 * 900 + 1000;
    expect(totals.quotation?.netCents).toBe(net);
    expect(totals.quotation?.totalCents).toBe(net + Math.round(net * 0.19));
    // Eleven reels with a length; the one without a rate counts by hand alone.
    expect(totals.plannedSeconds).toBeCloseTo(11 * 35 * 60 + totals.runningSeconds, 3);
  });

  it('offer nothing for a reel that stands aside', () => {
    const referred = {
      ...job,
      reels: job.reels.map((reel, index) =>
        index === 0 ? { ...reel, state: 'referred' as const } : reel,
      ),
    };
    const all = boxTotals(job, bench).quotation?.netCents ?? 0;
    expect(boxTotals(referred, bench).quotation?.netCents).toBe(all - 400 - 4 * 120);
    expect(boxTotals(referred, bench).frames).toBe(boxTotals(job, bench).frames);
  });

  it('of five hundred reels are the sum of each by itself', () => {
    const many = makeJob(
      Array.from({ length: 500 }, (_, index) =>
        makeReel(index + 1, {
          gauge: 'Super 8',
          lengthMetres: `${15 + index / 7}`,
          nativeFps: '16 2/3',
        }),
      ),
    );
    const totals = boxTotals(many, bench);
    const alone = many.reels.map((reel) => boxTotals(makeJob([reel]), bench));
    expect(totals.reelCount).toBe(500);
    // Each alone is rounded to whole film frames, the box once.
    const frames = alone.reduce((sum, each) => sum + each.frames, 0);
    expect(Math.abs(totals.frames - frames)).toBeLessThanOrEqual(500 / 2);
    const metres = alone.reduce((sum, { lengthMetres }) => sum + lengthMetres, 0);
    expect(totals.lengthMetres).toBeCloseTo(metres, 6);
  });
});

describe('a reel of the box', () => {
  it('is stopped by its findings, each at its station', () => {
    const found: ReelTexts = {
      boxWords: 'Regatta 1974',
      gauge: 'Super 8',
      'finding.year': '1974',
      'finding.smell': 'none',
      'finding.deposit': 'none',
      'finding.mould': 'none',
      'finding.warp': 'flat',
      'finding.base': 'acetate',
      'finding.brittleness': 'supple',
      'finding.acidLevel': 'level-0',
      'finding.shrinkagePercent': '0.1',
      'finding.perforations': 'none',
      'finding.splices': 'sound',
      'finding.stripe': 'none',
    };
    const facts = (texts: ReelTexts, projector = 'super-8') => {
      const reel = makeReel(1, texts);
      return reelFacts(makeJob([reel]), reel, projector);
    };
    expect(facts(found).verdict).toBe('run');
    expect(facts(found).notLookedAtCount).toBe(0);
    // Nothing said is the worst.
    expect(facts({}).notLookedAtCount).toBe(12);
    expect(whatStops('arrived', 'judged', facts({})).length).toBeGreaterThan(1);
    expect(facts({ ...found, 'finding.base': 'nitrate-suspected' }).mayBeNitrate).toBe(true);
    expect(facts({ ...found, 'finding.acidLevel': 'level-2' }).isForOthers).toBe(true);
    expect(facts({ ...found, 'finding.shrinkagePercent': 'much' }).isShrinkageMeasured).toBe(false);
    // Not looked at may be striped: no liquid.
    expect(facts({ ...found, 'finding.stripe': 'not-noted' }).isStriped).toBe(true);
    expect(facts({ ...found, gauge: 'Standard 8' }).fitsProjector).toBe(false);
    expect(facts(found, '').fitsProjector).toBeUndefined();
    expect(
      judgedReel(makeReel(1, { ...found, 'finding.base': 'nitrate-suspected' })).sentence,
    ).toMatch(/nitrate/iu);
  });

  it('takes the word of its owner about itself before that about the job', () => {
    const reel = makeReel(1, { 'consent.run': 'no' });
    const withConsent = { ...makeJob([reel]), texts: { 'consent.run': 'yes' } } as const;
    expect(reelFacts(withConsent, reel, '').consent.run).toBe('no');
    expect(reelFacts(withConsent, makeReel(2), '').consent.run).toBe('yes');
    expect(reelFacts(withConsent, reel, '').consent.mend).toBe('not-said');
  });

  it('shares its number with no other, however it is written', () => {
    const numbers = ['r007', '7', 'R007b', '8', '', ''];
    const reels = numbers.map((number, at) => makeReel(at, { number }));
    const job = makeJob(reels);
    expect(reels.map((reel) => isNumberItsOwn(job, reel))).toEqual([
      false,
      false,
      true,
      true,
      true,
      true,
    ]);
    expect(reelFacts(job, reels[0]!, 'super-8').isNumberItsOwn).toBe(false);
  });

  it('says what is wrong with a text, and asks which of the two 8 mm gauges it is', () => {
    expect(fieldMessage(REEL_FIELDS.gauge, '8 mm')).toMatch(/Standard 8 or Super 8\?/u);
    expect(fieldMessage(REEL_FIELDS.gauge, 'betamax')).toMatch(/no gauge of the book/u);
    expect(fieldMessage(REEL_FIELDS.lengthMetres, '15 kg')).toBeDefined();
    expect(fieldMessage(REEL_FIELDS.lengthMetres, '')).toBeUndefined();
    expect(fieldMessage(REEL_FIELDS.boxWords, '???')).toBeUndefined();
  });

  it('balances the list of a job', () => {
    const [one, two] = [makeReel(1), makeReel(2)];
    const open = makeJob([{ ...one, state: 'returned' }, two]);
    expect(reelBalance(open).isBalanced).toBe(false);
    const closed = { ...open, texts: { ...open.texts, elsewhereCount: '1' } };
    expect(reelBalance(closed)).toMatchObject({ countIn: 2, countOut: 1, isBalanced: true });
  });
});
