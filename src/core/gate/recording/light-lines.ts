/**
 * One line in the spectrum of the light: it turns `film` times with each film frame and `lamp` times
 * with the lamp. Sums and differences of both come from the product of shutter and lamp.
 */
export interface LightLine {
  readonly film: number;
  readonly lamp: 0 | 1;
}

/** What makes light change with a rate of its own. */
export type LineFamily = 'shutter' | 'unequal' | 'lamp';

const filmLine = (film: number): LightLine => ({ film, lamp: 0 });

/** Harmonics of the flash rate by which a shutter is recognised. */
const SHUTTER_HARMONICS = [1, 2, 3, 4];

/** As many lines tell unequal blades, so that they and a shutter are judged alike. */
const UNEQUAL_LINES = 4;

/** Products of lamp and shutter that are strong enough to be told: 2m + h·F. */
const LAMP_PRODUCTS = [0, -1, -2, -3, -4, 1];

/**
 * The lines of a cause: a shutter at the flash rate and its harmonics, unequal blades at the multiples
 * of the film rate between, a lamp at its own rate and at the sums and differences with the flash rate.
 */
export function familyLines(family: LineFamily, flashesPerFrame: number): readonly LightLine[] {
  switch (family) {
    case 'shutter':
      return SHUTTER_HARMONICS.map((harmonic) => filmLine(harmonic * flashesPerFrame));
    case 'unequal':
      return Array.from({ length: 2 * flashesPerFrame - 1 }, (_, index) => index + 1)
        .filter((film) => film % flashesPerFrame !== 0)
        .slice(0, UNEQUAL_LINES)
        .map(filmLine);
    case 'lamp':
      return LAMP_PRODUCTS.map((product) => ({ film: product * flashesPerFrame, lamp: 1 }));
  }
}

/** Harmonics of a shutter beyond those by which it is recognised. */
const FINE_HARMONICS = [5, 6, 7, 8];

/** Turns of a film frame up to which unequal blades are followed, in flashes. */
const FINE_FLASHES = 4;

/** The finer lines of a cause, which give its curve the right corners. */
export function fineLines(family: LineFamily, flashesPerFrame: number): readonly LightLine[] {
  switch (family) {
    case 'shutter':
      return FINE_HARMONICS.map((harmonic) => filmLine(harmonic * flashesPerFrame));
    case 'unequal':
      return Array.from({ length: FINE_FLASHES * flashesPerFrame }, (_, index) => index + 1)
        .filter((film) => film > flashesPerFrame && film % flashesPerFrame !== 0)
        .map(filmLine);
    case 'lamp':
      return [];
  }
}

/** Flashes up to which the lines of shutter and blades are followed where every corner counts. */
const FINEST_FLASHES = 10;

/**
 * Lines of an explanation with all that its shutter and blades add up to ten flashes. Corners that are
 * left out of a curve bend the film position instead, and with it film rate and readout time.
 */
export function withFinestLines(
  lines: readonly LightLine[],
  families: readonly LineFamily[],
  flashesPerFrame: number,
): readonly LightLine[] {
  const known = new Set(lines.filter(({ lamp }) => lamp === 0).map(({ film }) => film));
  const added = Array.from({ length: FINEST_FLASHES * flashesPerFrame }, (_, index) => index + 1)
    .filter((film) => families.includes(film % flashesPerFrame === 0 ? 'shutter' : 'unequal'))
    .filter((film) => !known.has(film))
    .map(filmLine);
  return [...lines, ...added];
}

/** Products of lamp and shutter too weak to tell a lamp by, which its ripple still holds. */
const WEAK_LAMP_PRODUCTS = [2, -5, 3, -6];

/** The weak lines of a lamp, which count where its ripple is measured. */
export function weakLampLines(flashesPerFrame: number): readonly LightLine[] {
  return WEAK_LAMP_PRODUCTS.map((product) => ({ film: product * flashesPerFrame, lamp: 1 }));
}

/** The few lines of a cause that move with the film and carry most of it. */
export function searchLines(family: LineFamily, flashesPerFrame: number): readonly LightLine[] {
  const lines = familyLines(family, flashesPerFrame).filter(({ film }) => film !== 0);
  return lines.slice(0, family === 'shutter' ? 1 : 2);
}

/** True rate of a line, Hz; a negative one turns the other way. */
export function lineHz(line: LightLine, filmFps: number, lampHz: number): number {
  return line.film * filmFps + line.lamp * lampHz;
}
