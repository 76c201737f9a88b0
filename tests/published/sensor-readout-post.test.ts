import { expect, test } from 'vitest';
import { bandsDownPicture } from '../../src/core/bands.ts';

test('transcription: with a thousand flashes a second the number of lines is the readout time in milliseconds', () => {
  for (const milliseconds of [5.5, 16, 21, 30]) {
    expect(bandsDownPicture(1000, milliseconds / 1000)).toBeCloseTo(milliseconds, 9);
  }
});
