import { describe, expect, test } from 'vitest';
import { GAUGES } from '../../../src/core/reel/gauges.ts';

// Table 1, 8 mm type S perforated along one edge.
describe('SMPTE 149, Table 1', () => {
  test('the gauge table holds the printed values', () => {
    const film = GAUGES['super-8'];
    expect(film.filmWidth).toMatchObject({ millimetres: 7.976, toleranceMillimetres: 0.038 });
    expect(film.pitch.long).toMatchObject({ millimetres: 4.234, toleranceMillimetres: 0.01 });
    expect(film.pitch.short).toMatchObject({ millimetres: 4.227, toleranceMillimetres: 0.01 });
    expect(film.pitch.long.hundredPitches).toMatchObject({ millimetres: 423.42 });
    expect(film.pitch.short?.hundredPitches).toMatchObject({ millimetres: 422.66 });
    expect(film.perforation.width.millimetres).toBe(0.914);
    expect(film.perforation.height.millimetres).toBe(1.143);
    expect(film.perforation.edgeDistance?.millimetres).toBe(0.51);
  });
});
