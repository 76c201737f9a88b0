import { describe, expect, test } from 'vitest';
import { exposureOfAngleSeconds, shutterAngleDegrees } from '../../src/core/gate/exposure.ts';

describe('times and angles at 24 frames/s', () => {
  test.each([
    [32, 270],
    [48, 180],
    [50, 172.8],
    [60, 144],
    [96, 90],
    [120, 72],
  ])('first table: 1/%d s is %d°', (fraction, degrees) => {
    expect(shutterAngleDegrees(1 / fraction, 24)).toBeCloseTo(degrees, 9);
  });

  test('transcription: 8640 divided by the angle is the fraction: 144° gives 60', () => {
    expect(1 / exposureOfAngleSeconds(144, 24)).toBeCloseTo(60, 9);
  });

  test('second table: 8.6° is 1/1000 s to the printed digits', () => {
    expect(shutterAngleDegrees(1 / 1000, 24)).toBeCloseTo(8.6, 1);
  });

  test('second table: the angle printed for 1/50 s is a misprint, and so are some small ones', () => {
    expect(Math.abs(1 / exposureOfAngleSeconds(178.8, 24) - 50)).toBeGreaterThan(1);
    // Printed 1/198 for 45°, 1/348 for 22.5°, 1/696 for 11°.
    expect(1 / exposureOfAngleSeconds(45, 24)).toBeCloseTo(192, 9);
    expect(1 / exposureOfAngleSeconds(22.5, 24)).toBeCloseTo(384, 9);
    expect(1 / exposureOfAngleSeconds(11, 24)).toBeCloseTo(785.5, 1);
  });
});
