import { expect, test } from 'vitest';
import { identifyGauge } from '../../../src/core/reel/gauge-identification.ts';

// Scope: 16 mm film perforated 8 mm type R, also called double 8.
test('film 16 mm wide with the pitch of Standard 8 is double 8', () => {
  const { candidates } = identifyGauge({
    filmWidthMillimetres: 15.95,
    pitchLengthMillimetres: 381,
    pitchCount: 100,
    readingErrorMillimetres: 0.5,
  });
  expect(candidates[0]).toMatchObject({ id: 'double-8-unslit', mismatches: [] });
});
