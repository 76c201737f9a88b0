import { describe, expect, test } from 'vitest';
import { flashRateHz } from '../../src/core/flash-rate.ts';

// Page 655.
describe('the handbook of projection', () => {
  const filmFps = (60 * 16) / 60; // 60 feet a minute, 16 frames in a foot of 35 mm film

  test('transcription: three wings at 60 feet a minute cut the light 2880 times a minute', () => {
    expect(flashRateHz(filmFps, 3) * 60).toBe(2880);
  });

  test('a lamp on 60 cycles, half of whose 7200 alternations are 3600, beats when film runs fast', () => {
    // Its flashes meet half the alternations of the current when the film runs at 20 frames/s.
    expect(flashRateHz(20, 3) * 60).toBe(3600);
    expect(flashRateHz(filmFps, 3) * 60).toBeLessThan(3600);
  });
});
