import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRangeError } from '../../../src/quantity/errors.ts';
import {
  identifyGauge,
  type Candidate,
  type FilmMeasurements,
} from '../../../src/core/reel/gauge-identification.ts';
import { GAUGE_IDS, GAUGES } from '../../../src/core/reel/gauges.ts';
import type { GaugeId } from '../../../src/core/reel/gauges/gauge.ts';

/** Perfect measurements of new film, all of them, over 20 pitches. */
function perfect(id: GaugeId, shrinkage = 0): Required<FilmMeasurements> {
  const { filmWidth, perforation, pitch, cameraPicture } = GAUGES[id];
  const [perforationPosition] = perforation.positions;
  if (perforationPosition === undefined) throw new Error(`${id} has no perforation position`);
  const left = 1 - shrinkage;
  return {
    filmWidthMillimetres: filmWidth.millimetres * left,
    perforationHeightMillimetres: perforation.height.millimetres * left,
    pitchLengthMillimetres: 20 * pitch.long.millimetres * left,
    pitchCount: 20,
    perforationPosition,
    pictureWidthMillimetres: cameraPicture[0].widthMillimetres * left,
    readingErrorMillimetres: 0.05,
  };
}

const anyGauge = fc.constantFrom(...GAUGE_IDS);
const first = (candidates: readonly Candidate[]): Candidate => {
  const [candidate] = candidates;
  if (candidate === undefined) throw new Error('no candidate');
  return candidate;
};

describe('the gauge finder', () => {
  test.each(GAUGE_IDS)('knows %s from full measurements, alone', (id) => {
    const { candidates, result } = identifyGauge(perfect(id));
    expect(first(candidates).id).toBe(id);
    expect(first(candidates).mismatches).toEqual([]);
    expect(result).toBe('one');
  });

  test('knows every gauge when it has shrunk by up to two percent', () => {
    fc.assert(
      fc.property(anyGauge, fc.double({ min: 0, max: 0.02, noNaN: true }), (id, shrinkage) => {
        expect(first(identifyGauge(perfect(id, shrinkage)).candidates).id).toBe(id);
      }),
    );
  });

  test('cannot tell Standard 8 from Super 8 by the width, and says so', () => {
    const { candidates, result } = identifyGauge({
      filmWidthMillimetres: 7.98,
      pitchCount: 1,
      readingErrorMillimetres: 0.1,
    });
    expect(result).toBe('several');
    const fitting = candidates.filter(({ mismatches }) => mismatches.length === 0);
    expect(fitting.map(({ id }) => id).sort()).toEqual(['8mm-type-r', 'super-8']);
  });

  test('tells the two 8 mm gauges apart by ten pitches with an ordinary ruler', () => {
    for (const [id, length] of [
      ['8mm-type-r', 38.1],
      ['super-8', 42.3],
    ] as const) {
      const { candidates, result } = identifyGauge({
        filmWidthMillimetres: 8,
        pitchLengthMillimetres: length,
        pitchCount: 10,
        readingErrorMillimetres: 0.5,
      });
      expect(result).toBe('one');
      expect(first(candidates).id).toBe(id);
    }
  });

  test('leaves 16 mm and Super 16 open until the picture is measured', () => {
    const film: FilmMeasurements = {
      filmWidthMillimetres: 15.95,
      pitchLengthMillimetres: 76.2,
      pitchCount: 10,
      perforationPosition: 'one-edge-at-frame-line',
      readingErrorMillimetres: 0.3,
    };
    expect(identifyGauge(film).result).toBe('several');
    const wide = identifyGauge({ ...film, pictureWidthMillimetres: 12.4 });
    expect(wide.result).toBe('one');
    expect(first(wide.candidates).id).toBe('super-16');
    const narrow = identifyGauge({ ...film, pictureWidthMillimetres: 10.3 });
    expect(first(narrow.candidates).id).toBe('16mm');
  });

  test('finds unslit double 8: 16 mm wide with twice as many holes', () => {
    const { candidates, result } = identifyGauge({
      filmWidthMillimetres: 15.95,
      pitchLengthMillimetres: 38.1,
      pitchCount: 10,
      perforationPosition: 'both-edges-at-frame-line',
      readingErrorMillimetres: 0.3,
    });
    expect(result).toBe('one');
    expect(first(candidates).id).toBe('double-8-unslit');
  });

  test.each([17.5, 22, 28, 70])('fits a film of %d mm to nothing', (filmWidthMillimetres) => {
    const { result } = identifyGauge({
      filmWidthMillimetres,
      pitchCount: 1,
      readingErrorMillimetres: 0.2,
    });
    expect(result).toBe('none');
  });

  test('gives the range that was missed for every length that disagrees', () => {
    const { candidates } = identifyGauge({ ...perfect('super-8'), filmWidthMillimetres: 9.5 });
    const super8 = candidates.find(({ id }) => id === 'super-8');
    expect(super8?.mismatches).toHaveLength(1);
    expect(super8?.mismatches[0]).toMatchObject({
      feature: 'film-width',
      measuredMillimetres: 9.5,
    });
    expect(super8?.mismatches[0]?.allowed?.most).toBeLessThan(9.5);
  });

  test('ranks by the number of disagreements first, then by the misfit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 3, max: 10, noNaN: true }),
        (filmWidthMillimetres, pitch) => {
          const { candidates, result } = identifyGauge({
            filmWidthMillimetres,
            pitchLengthMillimetres: pitch * 10,
            pitchCount: 10,
            readingErrorMillimetres: 0.2,
          });
          expect(candidates).toHaveLength(GAUGE_IDS.length + 1);
          for (const [index, candidate] of candidates.entries()) {
            const next = candidates[index + 1];
            if (next === undefined) continue;
            const isOrdered =
              candidate.mismatches.length < next.mismatches.length ||
              (candidate.mismatches.length === next.mismatches.length &&
                candidate.misfit <= next.misfit);
            expect(isOrdered).toBe(true);
          }
          expect(result === 'none').toBe(first(candidates).mismatches.length > 0);
        },
      ),
    );
  });

  test('never loses a candidate when the reading error grows', () => {
    fc.assert(
      fc.property(anyGauge, fc.double({ min: 0, max: 1, noNaN: true }), (id, more) => {
        const measured = perfect(id, 0.025);
        const before = identifyGauge(measured);
        const after = identifyGauge({
          ...measured,
          readingErrorMillimetres: measured.readingErrorMillimetres + more,
        });
        for (const candidate of before.candidates) {
          const later = after.candidates.find((each) => each.id === candidate.id);
          expect(later?.mismatches.length).toBeLessThanOrEqual(candidate.mismatches.length);
        }
      }),
    );
  });

  test('refuses lengths that cannot be', () => {
    const film = { filmWidthMillimetres: 8, pitchCount: 10, readingErrorMillimetres: 0.1 };
    expect(() => identifyGauge({ ...film, filmWidthMillimetres: 0 })).toThrow(OutOfRangeError);
    expect(() => identifyGauge({ ...film, pitchCount: 0 })).toThrow(OutOfRangeError);
    expect(() => identifyGauge({ ...film, pitchLengthMillimetres: -1 })).toThrow(OutOfRangeError);
    expect(() => identifyGauge({ ...film, pictureWidthMillimetres: 9 })).toThrow(/no wider/u);
  });
});
