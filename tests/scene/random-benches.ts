import fc from 'fast-check';
import type { BenchNumbers } from '../../src/scene/camera/setting.ts';

/** Any bench that a reader could describe: blades alike, with a wide pulldown blade, or each its own. */
export const anyBench: fc.Arbitrary<BenchNumbers> = fc
  .record({
    filmFps: fc.double({ min: 8, max: 30, noNaN: true }),
    flashesPerFrame: fc.integer({ min: 1, max: 5 }),
    openFraction: fc.double({ min: 0.3, max: 0.85, noNaN: true }),
    wipe: fc.double({ min: 0, max: 0.9, noNaN: true }),
    bladeDegrees: fc.option(
      fc.array(
        fc.tuple(
          fc.double({ min: 1, max: 4, noNaN: true }),
          fc.double({ min: 1, max: 4, noNaN: true }),
        ),
        { minLength: 2, maxLength: 4 },
      ),
      { nil: undefined, freq: 4 },
    ),
    cameraFps: fc.constantFrom(8, 15, 24, 25, 29.97, 30, 50, 59.94, 60, 100),
    exposureShare: fc.double({ min: 0.02, max: 1, noNaN: true }),
    readoutShare: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 1, noNaN: true })),
    phase: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ wipe, exposureShare, readoutShare, bladeDegrees, ...bench }): BenchNumbers => {
    const sum = (bladeDegrees ?? []).flat().reduce((total, part) => total + part, 0);
    const scaled = bladeDegrees?.map(
      ([open, closed]) => [(360 * open) / sum, (360 * closed) / sum] as const,
    );
    const narrowest =
      (360 * Math.min(bench.openFraction, 1 - bench.openFraction)) / bench.flashesPerFrame;
    return {
      ...bench,
      bladeDegrees: scaled,
      edgeWipeDegrees: wipe < 0.4 ? 0 : narrowest * wipe,
      exposureSeconds: exposureShare / bench.cameraFps,
      readoutSeconds: readoutShare / bench.cameraFps,
    };
  });
