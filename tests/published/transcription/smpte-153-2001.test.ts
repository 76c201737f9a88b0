import { expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';
import { filmStrip } from '../../../src/core/reel/film-strip.ts';

// Notes: reduction of approximately 1.8 to 1 from 16 mm, picture centred on the perforation.
test('16 mm to Super 8 is a reduction of about 1.8 to 1', () => {
  const sixteen = GAUGES['16mm'].cameraPicture.find(({ source }) => source === 'wheeler-1953');
  const super8 = GAUGES['super-8'].cameraPicture.find(({ source }) => source === 'smpte-154-157');
  const ratio = (sixteen?.heightMillimetres ?? 0) / (super8?.heightMillimetres ?? 1);
  expect(ratio.toFixed(1)).toBe('1.8');
  expect(
    (GAUGES['16mm'].pitch.long.millimetres / GAUGES['super-8'].pitch.long.millimetres).toFixed(1),
  ).toBe('1.8');
});

test('the picture of Super 8 is drawn level with its perforation', () => {
  const { picture, perforations } = filmStrip('super-8', 'none');
  expect(picture.centreMillimetres).toBe(perforations[0]?.centreMillimetres);
});
