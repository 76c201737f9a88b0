import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import { GAUGE_IDS, GAUGES } from './gauges.ts';
import type { Gauge, GaugeId, PerforationPosition } from './gauges/gauge.ts';

/** What a worker can measure on an unknown film; everything but the width may be missing. */
export interface FilmMeasurements {
  readonly filmWidthMillimetres: number;
  readonly perforationHeightMillimetres?: number;
  /** Length over {@link pitchCount} pitches, hole to the same edge of the hole N further on. */
  readonly pitchLengthMillimetres?: number;
  readonly pitchCount: number;
  readonly perforationPosition?: PerforationPosition;
  readonly pictureWidthMillimetres?: number;
  /** How far the ruler or calliper may be off, mm. */
  readonly readingErrorMillimetres: number;
}

export type Feature =
  | 'film-width'
  | 'perforation-height'
  | 'pitch'
  | 'perforation-position'
  | 'picture-width';

/** One measured feature held against one gauge. */
export interface Finding {
  readonly feature: Feature;
  readonly agrees: boolean;
  /** Range that this gauge allows, mm, with shrinkage and reading error; absent for positions. */
  readonly allowed?: { readonly least: number; readonly most: number };
  readonly measuredMillimetres?: number;
}

/** Double 8 before slitting: 16 mm wide with the holes of 8 mm, twice as many as 16 mm film. */
export type CandidateId = GaugeId | 'double-8-unslit';

export interface Candidate {
  readonly id: CandidateId;
  readonly name: string;
  readonly findings: readonly Finding[];
  readonly mismatches: readonly Finding[];
  /** Sum of squared distances from the middle of each allowed range; 0 is a perfect fit. */
  readonly misfit: number;
}

export interface Identification {
  /** `one` gauge fits, `several` fit as far as measured, `none` fits: refer to a specialist. */
  readonly result: 'one' | 'several' | 'none';
  readonly candidates: readonly Candidate[];
}

/** Old film may be shorter and narrower by this much and is still recognised; common practice. */
const MOST_SHRINKAGE = 0.03;
/** Damp or freshly processed film may be a little larger than new film; common practice. */
const MOST_SWELLING = 0.005;
/** Extra play for a nominal value that is only remembered, mm. */
const MEMORY_PLAY = 0.2;

interface Nominal {
  readonly id: CandidateId;
  readonly name: string;
  readonly gauge: Gauge;
  readonly filmWidthMillimetres: number;
  readonly positions: readonly PerforationPosition[];
}

const NOMINALS: readonly Nominal[] = [
  ...GAUGE_IDS.map((id): Nominal => {
    const gauge = GAUGES[id];
    return {
      id,
      name: gauge.name,
      gauge,
      filmWidthMillimetres: gauge.filmWidth.millimetres,
      positions: gauge.perforation.positions,
    };
  }),
  {
    id: 'double-8-unslit',
    name: 'double 8 not yet slit',
    gauge: GAUGES['8mm-type-r'],
    filmWidthMillimetres: GAUGES['16mm'].filmWidth.millimetres,
    positions: ['both-edges-at-frame-line'],
  },
];

interface Span {
  readonly least: number;
  readonly most: number;
}

function widened(span: Span, play: number): Span {
  return {
    least: span.least * (1 - MOST_SHRINKAGE) - play,
    most: span.most * (1 + MOST_SWELLING) + play,
  };
}

function held(feature: Feature, measuredMillimetres: number, allowed: Span): Finding {
  return {
    feature,
    agrees: measuredMillimetres >= allowed.least && measuredMillimetres <= allowed.most,
    allowed,
    measuredMillimetres,
  };
}

function findingsFor(nominal: Nominal, measured: FilmMeasurements): readonly Finding[] {
  const { gauge } = nominal;
  const play = measured.readingErrorMillimetres;
  const findings: Finding[] = [
    held(
      'film-width',
      measured.filmWidthMillimetres,
      widened({ least: nominal.filmWidthMillimetres, most: nominal.filmWidthMillimetres }, play),
    ),
  ];
  if (measured.pitchLengthMillimetres !== undefined) {
    const { long, short } = gauge.pitch;
    const span = {
      least: (short ?? long).millimetres * measured.pitchCount,
      most: long.millimetres * measured.pitchCount,
    };
    findings.push(held('pitch', measured.pitchLengthMillimetres, widened(span, play)));
  }
  if (measured.perforationHeightMillimetres !== undefined) {
    const { height } = gauge.perforation;
    const extra = height.status === 'memory' && nominal.id === '9.5mm' ? MEMORY_PLAY : 0;
    const span = { least: height.millimetres, most: height.millimetres };
    findings.push(
      held(
        'perforation-height',
        measured.perforationHeightMillimetres,
        widened(span, play + extra),
      ),
    );
  }
  if (measured.pictureWidthMillimetres !== undefined) {
    const widths = [...gauge.cameraPicture, ...gauge.projectedPicture].map(
      ({ widthMillimetres }) => widthMillimetres,
    );
    const span = { least: Math.min(...widths), most: Math.max(...widths) };
    findings.push(
      held('picture-width', measured.pictureWidthMillimetres, widened(span, play + MEMORY_PLAY)),
    );
  }
  if (measured.perforationPosition !== undefined) {
    findings.push({
      feature: 'perforation-position',
      agrees: nominal.positions.includes(measured.perforationPosition),
    });
  }
  return findings;
}

function misfitOf(findings: readonly Finding[]): number {
  return findings.reduce((sum, { allowed, measuredMillimetres }) => {
    if (allowed === undefined || measuredMillimetres === undefined) return sum;
    const middle = (allowed.least + allowed.most) / 2;
    const half = Math.max((allowed.most - allowed.least) / 2, 1e-9);
    return sum + ((measuredMillimetres - middle) / half) ** 2;
  }, 0);
}

function requireMeasurements(measured: FilmMeasurements): void {
  const millimetres = (maximum: number) => ({ above: 0, maximum, unit: 'mm' });
  requireInterval('filmWidthMillimetres', measured.filmWidthMillimetres, millimetres(100));
  requireInterval('pitchCount', measured.pitchCount, { minimum: 1, maximum: 1000, whole: true });
  requireInterval('readingErrorMillimetres', measured.readingErrorMillimetres, {
    minimum: 0,
    maximum: 2,
    unit: 'mm',
  });
  const optional: readonly (readonly [string, number | undefined, number])[] = [
    ['perforationHeightMillimetres', measured.perforationHeightMillimetres, 20],
    ['pitchLengthMillimetres', measured.pitchLengthMillimetres, 20_000],
    ['pictureWidthMillimetres', measured.pictureWidthMillimetres, 100],
  ];
  for (const [name, value, maximum] of optional) {
    if (value !== undefined) requireInterval(name, value, millimetres(maximum));
  }
  const { pictureWidthMillimetres, filmWidthMillimetres } = measured;
  if (pictureWidthMillimetres !== undefined && pictureWidthMillimetres > filmWidthMillimetres) {
    throw new OutOfRangeError(
      'pictureWidthMillimetres',
      pictureWidthMillimetres,
      `a picture no wider than the film, ${filmWidthMillimetres} mm`,
    );
  }
}

/**
 * Gauges that an unknown film may be, best first, each with the features that speak against it. When
 * none fits, the film is not of this book: do not force it into a gate, refer it to a specialist.
 *
 * Model: each measured feature must lie in the range from 3 % below to 0.5 % above the published
 * value, widened by the reading error (remembered values by a little more). Candidates are ranked by
 * the number of features that disagree, then by the squared distance from the middle of the ranges.
 * The 3 % and 0.5 % are common practice, without a source.
 *
 * @param measured  measurements of the film, mm; only the width is needed
 * @returns candidates in order, and whether one, several or none fit
 * @throws {OutOfRangeError} for a measurement that is not a possible length
 * @source smpte-149-2004, the gauge table for all others
 */
export function identifyGauge(measured: FilmMeasurements): Identification {
  requireMeasurements(measured);
  const candidates = NOMINALS.map((nominal): Candidate => {
    const findings = findingsFor(nominal, measured);
    return {
      id: nominal.id,
      name: nominal.name,
      findings,
      mismatches: findings.filter(({ agrees }) => !agrees),
      misfit: misfitOf(findings),
    };
  }).sort((a, b) => a.mismatches.length - b.mismatches.length || a.misfit - b.misfit);
  const fitting = candidates.filter(({ mismatches }) => mismatches.length === 0).length;
  return { candidates, result: fitting === 0 ? 'none' : fitting === 1 ? 'one' : 'several' };
}
