import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';
import type { Provenance } from './gauges/gauge.ts';

/** Wound thickness of a kind of film, mm: the film itself, and with the air wound in. */
export interface WoundThickness extends Provenance {
  readonly name: string;
  readonly minimumMillimetres: number;
  readonly maximumMillimetres: number;
  /** Where the likely thickness is not the middle of the range. */
  readonly likelyMillimetres?: number;
}

export type FilmKind =
  | 'unknown'
  | 'acetate-black-and-white'
  | 'acetate-colour'
  | 'acetate-unsure'
  | 'acetate-striped'
  | 'polyester-print'
  | 'polyester-thin';

/**
 * Wound thickness by kind of film. The lower end is the thickness of the film, the upper end that of
 * a loose winding: full reels of 35 mm film come out 9 to 11 % thicker than the film itself.
 *
 * @source international-projectionist-1958, theatre-catalog-1953, data-sheet-h-1-5242-2008
 */
export const WOUND_THICKNESS: Readonly<Record<FilmKind, WoundThickness>> = {
  unknown: {
    name: 'not looked at',
    minimumMillimetres: 0.09,
    maximumMillimetres: 0.2036,
    likelyMillimetres: 0.1678,
    source: 'from-memory',
    status: 'memory',
    note: 'From the thinnest polyester to striped acetate in a loose winding; acetate is the likely one',
  },
  'acetate-black-and-white': {
    name: 'Acetate, black and white',
    minimumMillimetres: 0.1524,
    maximumMillimetres: 0.1666,
    source: 'international-projectionist-1958',
    status: 'seen',
    note: '0.0060 in; wound 0.00656 in by the reel capacity of theatre-catalog-1953',
  },
  'acetate-colour': {
    name: 'Acetate, colour',
    minimumMillimetres: 0.1651,
    maximumMillimetres: 0.1832,
    source: 'international-projectionist-1958',
    status: 'seen',
    note: '0.0065 in; wound 0.00721 in by the reel capacity of theatre-catalog-1953',
  },
  'acetate-unsure': {
    name: 'Acetate, not sure which',
    minimumMillimetres: 0.1524,
    maximumMillimetres: 0.1832,
    source: 'international-projectionist-1958',
    status: 'seen',
    note: 'Covers both',
  },
  'acetate-striped': {
    name: 'Acetate with a magnetic stripe',
    minimumMillimetres: 0.1693,
    maximumMillimetres: 0.2036,
    source: 'international-projectionist-1958',
    status: 'derived',
    note: 'A stripe costs about 10 % of the capacity: both ends divided by 0.9',
  },
  'polyester-print': {
    name: 'Polyester, print film',
    minimumMillimetres: 0.133,
    maximumMillimetres: 0.161,
    source: 'data-sheet-h-1-5242-2008',
    status: 'derived',
    note: 'Base of 0.120 mm plus an emulsion of 0.013–0.025 mm, and 11 % for a loose winding',
  },
  'polyester-thin': {
    name: 'Polyester, thin 8 mm film',
    minimumMillimetres: 0.09,
    maximumMillimetres: 0.122,
    source: 'from-memory',
    status: 'memory',
    note: 'About 0.09–0.11 mm, and 11 % for a loose winding; no source was found, so measure it',
  },
};

/** Air in a loose winding adds up to this share to the thickness of the film. */
const MOST_AIR = 0.11;

/**
 * Wound thickness of film that was measured with callipers, from tight to loosely wound.
 *
 * Model: the measured thickness, and 11 % more for the air of a loose winding; approximate.
 *
 * @param filmMillimetres  thickness of one turn, mm: ten turns in the callipers, divided by ten; 0.02–0.5
 * @returns wound thickness, from and to
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source theatre-catalog-1953
 */
export function measuredThickness(filmMillimetres: number): WoundThickness {
  requireInterval('measuredMillimetres', filmMillimetres, {
    minimum: 0.02,
    maximum: 0.5,
    unit: 'mm',
  });
  return {
    name: 'measured',
    minimumMillimetres: filmMillimetres,
    maximumMillimetres: filmMillimetres * (1 + MOST_AIR),
    source: 'theatre-catalog-1953',
    status: 'derived',
    note: 'Your measurement, and 11 % for a loose winding',
  };
}

/**
 * The thickness that a winding most likely has, mm: the middle of its range where nothing else is said.
 *
 * @param thickness  wound thickness, from and to
 * @returns thickness, mm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example likelyThicknessMillimetres({ minimumMillimetres: 0.15, maximumMillimetres: 0.17 }) // ≈ 0.16
 */
export function likelyThicknessMillimetres(
  thickness: Pick<
    WoundThickness,
    'minimumMillimetres' | 'maximumMillimetres' | 'likelyMillimetres'
  >,
): number {
  const { minimumMillimetres, maximumMillimetres, likelyMillimetres } = thickness;
  const likely = likelyMillimetres ?? (minimumMillimetres + maximumMillimetres) / 2;
  return requireInterval('thicknessMillimetres', likely, THICKNESS);
}

const DIAMETER = { above: 0, maximum: 2000, unit: 'mm' };
const THICKNESS = { minimum: 0.02, maximum: 1, unit: 'mm' };

function requireWinding(outerDiameterMillimetres: number, coreDiameterMillimetres: number): void {
  requireInterval('outerDiameterMillimetres', outerDiameterMillimetres, DIAMETER);
  requireInterval('coreDiameterMillimetres', coreDiameterMillimetres, DIAMETER);
  if (outerDiameterMillimetres < coreDiameterMillimetres) {
    throw new OutOfRangeError(
      'outerDiameterMillimetres',
      outerDiameterMillimetres,
      `no less than the core, ${coreDiameterMillimetres} mm`,
    );
  }
}

/**
 * Length of film wound between a core and an outer diameter, mm.
 *
 * Model: L = π(D² − d²)/(4t): the side of the roll is a ring, and the film covers it. Exact for a
 * spiral wound evenly with thickness t per turn; real rolls wind in air, so t is a range.
 *
 * @param outerDiameterMillimetres  outer diameter of the film pack, mm; > 0, at most 2000, not below the core
 * @param coreDiameterMillimetres   diameter of the core or hub, mm; > 0
 * @param thicknessMillimetres      wound thickness per turn, mm; 0.02–1
 * @returns length, mm; ≥ 0
 * @throws {OutOfRangeError} for a value outside its range, or an outer diameter below the core
 * @source arithmetic
 * @example woundLengthMillimetres(171.45, 63.5, 0.1651) // ≈ 120654
 */
export function woundLengthMillimetres(
  outerDiameterMillimetres: number,
  coreDiameterMillimetres: number,
  thicknessMillimetres: number,
): number {
  requireWinding(outerDiameterMillimetres, coreDiameterMillimetres);
  requireInterval('thicknessMillimetres', thicknessMillimetres, THICKNESS);
  return (
    (Math.PI * (outerDiameterMillimetres ** 2 - coreDiameterMillimetres ** 2)) /
    (4 * thicknessMillimetres)
  );
}

/** Length on a reel with what is unsure about it, mm. */
export interface LengthRange {
  readonly leastMillimetres: number;
  readonly likelyMillimetres: number;
  readonly mostMillimetres: number;
}

/**
 * Length on a reel with its uncertainty, from two measured diameters and a thickness range.
 *
 * Model: the roll formula at its corners: smallest outer, largest core and thickest film give the
 * least; the opposite gives the most; the measured diameters with the likely thickness give the likely
 * length. A worst case, not a standard deviation.
 *
 * @param outerDiameterMillimetres  outer diameter of the film pack, mm
 * @param coreDiameterMillimetres   diameter of the core, mm
 * @param diameterErrorMillimetres  how far each reading may be off, mm; 0–50
 * @param thickness                 wound thickness from and to, mm
 * @returns least, likely and most length, mm
 * @throws {OutOfRangeError} for a value outside its range, or when the reading error leaves no winding
 * @source arithmetic
 */
export function woundLengthRange(
  outerDiameterMillimetres: number,
  coreDiameterMillimetres: number,
  diameterErrorMillimetres: number,
  thickness: Pick<
    WoundThickness,
    'minimumMillimetres' | 'maximumMillimetres' | 'likelyMillimetres'
  >,
): LengthRange {
  requireWinding(outerDiameterMillimetres, coreDiameterMillimetres);
  requireInterval('diameterErrorMillimetres', diameterErrorMillimetres, {
    minimum: 0,
    maximum: 50,
    unit: 'mm',
  });
  const { minimumMillimetres: thinnest, maximumMillimetres: thickest } = thickness;
  const smallestOuter = outerDiameterMillimetres - diameterErrorMillimetres;
  const largestCore = coreDiameterMillimetres + diameterErrorMillimetres;
  if (smallestOuter < largestCore) {
    throw new OutOfRangeError(
      'diameterErrorMillimetres',
      diameterErrorMillimetres,
      `a reading error smaller than half the winding, here at most ${(outerDiameterMillimetres - coreDiameterMillimetres) / 2} mm`,
    );
  }
  const smallestCore = Math.max(1e-6, coreDiameterMillimetres - diameterErrorMillimetres);
  return {
    leastMillimetres: woundLengthMillimetres(smallestOuter, largestCore, thickest),
    likelyMillimetres: woundLengthMillimetres(
      outerDiameterMillimetres,
      coreDiameterMillimetres,
      likelyThicknessMillimetres(thickness),
    ),
    mostMillimetres: woundLengthMillimetres(
      outerDiameterMillimetres + diameterErrorMillimetres,
      smallestCore,
      thinnest,
    ),
  };
}

/**
 * Outer diameter that a length of film reaches on a core, mm: will it fit the take-up reel?
 *
 * Model: D = √(d² + 4·t·L/π), the roll formula solved for D.
 *
 * @param lengthMillimetres         length, mm; 0 to 1e7
 * @param coreDiameterMillimetres   diameter of the core, mm; > 0, at most 2000
 * @param thicknessMillimetres      wound thickness per turn, mm; 0.02–1
 * @returns outer diameter, mm; not below the core
 * @throws {OutOfRangeError} for a value outside its range
 * @source arithmetic
 * @example outerDiameterMillimetres(120654, 63.5, 0.1651) // ≈ 171.45
 */
export function outerDiameterMillimetres(
  lengthMillimetres: number,
  coreDiameterMillimetres: number,
  thicknessMillimetres: number,
): number {
  requireInterval('lengthMillimetres', lengthMillimetres, {
    minimum: 0,
    maximum: 1e7,
    unit: 'mm',
  });
  requireInterval('coreDiameterMillimetres', coreDiameterMillimetres, DIAMETER);
  requireInterval('thicknessMillimetres', thicknessMillimetres, THICKNESS);
  return Math.sqrt(
    coreDiameterMillimetres ** 2 + (4 * thicknessMillimetres * lengthMillimetres) / Math.PI,
  );
}
