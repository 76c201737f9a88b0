import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobTime, workingDays, type JobParts } from '../../../src/core/customer/job-time.ts';
import { expectRelative } from '../relative.ts';

/** Works through the job reel by reel with a clock, repeating the share of reels at the end. */
function byTheClock(parts: JobParts): { readonly total: number; readonly watch: number } {
  let clock = 0;
  let watch = 0;
  const run = (share: number): void => {
    clock += share * parts.handlingSeconds;
    let frames = parts.framesPerReel * share;
    while (frames > 0) {
      const taken = Math.min(frames, parts.framesPerSecond);
      clock += taken / parts.framesPerSecond;
      watch += taken / parts.framesPerSecond;
      frames -= taken;
    }
  };
  for (let reel = 0; reel < parts.reelCount; reel += 1) {
    run(1);
    clock += parts.afterWorkSeconds;
  }
  for (let reel = 0; reel < parts.reelCount; reel += 1) run(parts.repeatPercent / 100);
  return { total: clock, watch };
}

const parts: fc.Arbitrary<JobParts> = fc.record({
  reelCount: fc.integer({ min: 1, max: 20 }),
  framesPerReel: fc.integer({ min: 100, max: 20_000 }),
  framesPerSecond: fc.double({ min: 1, max: 60, noNaN: true }),
  handlingSeconds: fc.double({ min: 0, max: 3600, noNaN: true }),
  afterWorkSeconds: fc.double({ min: 0, max: 3600, noNaN: true }),
  repeatPercent: fc.double({ min: 0, max: 100, noNaN: true }),
});

describe('the time of a job', () => {
  test('is what the clock says', () => {
    fc.assert(
      fc.property(parts, (job) => {
        const clock = byTheClock(job);
        expectRelative(jobTime(job).totalSeconds, clock.total, 1e-9);
        expectRelative(jobTime(job).watchSeconds, clock.watch, 1e-9);
      }),
    );
  });

  test('grows with every part', () => {
    fc.assert(
      fc.property(parts, (job) => {
        const before = jobTime(job).totalSeconds;
        expect(jobTime({ ...job, reelCount: job.reelCount + 1 }).totalSeconds).toBeGreaterThan(
          before,
        );
        expect(
          jobTime({ ...job, framesPerSecond: job.framesPerSecond * 2 }).totalSeconds,
        ).toBeLessThan(before);
      }),
    );
  });

  test('of 180 m of Super 8 at two frames a second is about six hours', () => {
    const framesPerReel = 180_000 / 4.234;
    const { runSeconds } = jobTime({
      reelCount: 1,
      framesPerReel,
      framesPerSecond: 2,
      handlingSeconds: 0,
      afterWorkSeconds: 0,
      repeatPercent: 0,
    });
    expect(runSeconds / 3600).toBeGreaterThan(5.8);
    expect(runSeconds / 3600).toBeLessThan(6.1);
  });

  test('names the part that is not accepted', () => {
    const job: JobParts = {
      reelCount: 1,
      framesPerReel: 3600,
      framesPerSecond: 18,
      handlingSeconds: 0,
      afterWorkSeconds: 0,
      repeatPercent: 0,
    };
    expect(() => jobTime({ ...job, reelCount: 0 })).toThrow(/reelCount/u);
    expect(() => jobTime({ ...job, handlingSeconds: -1 })).toThrow(/handlingSeconds/u);
    expect(() => jobTime({ ...job, framesPerSecond: 0 })).toThrow(/framesPerSecond/u);
  });
});

describe('working days', () => {
  test('are begun one by one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e6, noNaN: true }),
        fc.double({ min: 0.5, max: 24, noNaN: true }),
        (seconds, hours) => {
          let days = 0;
          let left = seconds;
          while (left > 1e-6) {
            left -= hours * 3600;
            days += 1;
          }
          expect(workingDays(seconds, hours)).toBe(days);
        },
      ),
    );
  });

  test('do not begin a new day for a rounding error', () => {
    expect(workingDays(3 * 0.1 * 36_000, 1)).toBe(3);
    expect(workingDays(0, 8)).toBe(0);
  });
});
