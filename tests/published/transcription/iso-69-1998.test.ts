import { expect, test } from 'vitest';
import { filmStrip } from '../../../src/core/reel/film-strip.ts';
import { identifyGauge } from '../../../src/core/reel/gauge-identification.ts';

// Scope: 16 mm film with one or two rows of perforations.
test.each(['one-edge-at-frame-line', 'both-edges-at-frame-line'] as const)(
  '16 mm film may have holes %s',
  (perforationPosition) => {
    const { candidates } = identifyGauge({
      filmWidthMillimetres: 15.95,
      pitchCount: 1,
      readingErrorMillimetres: 0.1,
      perforationPosition,
    });
    const sixteen = candidates.find(({ id }) => id === '16mm');
    expect(sixteen?.mismatches).toEqual([]);
  },
);

test('both kinds can be drawn', () => {
  expect(filmStrip('16mm', 'none').perforations).toHaveLength(2);
  expect(filmStrip('16mm', 'magnetic').perforations).toHaveLength(1);
});
