import { requireInterval } from '../../quantity/errors.ts';

/**
 * Sources of light for a gate, with the light that each watt of their radiation carries: a filament at
 * 3,200 K by Planck's law and the eye of the standard observer, the same with the infrared beyond about
 * 0.95 µm held back, and the upper end of what is printed for white LEDs.
 */
export const LIGHT_SOURCES = {
  filament: { name: 'Filament lamp, no heat glass', lumensPerWatt: 27 },
  'filament-heat-glass': { name: 'Filament lamp behind heat glass', lumensPerWatt: 100 },
  'white-led': { name: 'White LED', lumensPerWatt: 300 },
} as const;

/** Id of a light source. */
export type LightSourceId = keyof typeof LIGHT_SOURCES;

/** Film as a slab: cellulose acetate, inside the ranges of tables, and the thickness of 8 mm film. */
const FILM = {
  densityKgPerCubicMetre: 1300,
  heatJoulesPerKgKelvin: 1500,
  conductivityWattsPerMetreKelvin: 0.2,
  thicknessMetres: 0.152e-3,
} as const;

const STILL_AIR_WATTS_PER_SQUARE_METRE_KELVIN = 20;
const LENS_TRANSMISSION = 0.9;
/** Heat that a square metre of film takes up for each kelvin, J. */
const HEAT_OF_FILM =
  FILM.densityKgPerCubicMetre * FILM.heatJoulesPerKgKelvin * FILM.thicknessMetres;

/** What the camera is set to. */
export interface CameraLightSetting {
  readonly sensitivity: number;
  readonly exposureSeconds: number;
  readonly openFraction: number;
  readonly effectiveFNumber: number;
}

/**
 * Light in the open gate at which clear film just does not clip, for even (diffused) light.
 *
 * Model: E = 78 ÷ (S × T × d) × 4 N_e² ÷ 0.9: the exposure that saturates a sensor of ISO speed S,
 * through a lens that passes 0.9 of the light. A lamp with a condenser needs several times less.
 * Good to about a stop.
 *
 * @param setting  ISO number 1–1e6; exposure time, s, > 0; open fraction 0–1; effective f-number > 0
 * @returns illuminance in the gate while it is open, lx
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from-memory
 * @example neededLux({ sensitivity: 100, exposureSeconds: 1 / 50, openFraction: 0.5, effectiveFNumber: 10 }) // ≈ 34666.7
 */
export function neededLux(setting: CameraLightSetting): number {
  const { sensitivity, exposureSeconds, openFraction, effectiveFNumber } = setting;
  requireInterval('sensitivity', sensitivity, { minimum: 1, maximum: 1e6 });
  requireInterval('exposureSeconds', exposureSeconds, { above: 0, maximum: 10, unit: 's' });
  requireInterval('openFraction', openFraction, { above: 0, maximum: 1 });
  requireInterval('fNumber', effectiveFNumber, { above: 0, maximum: 1e5 });
  const saturationLuxSeconds = 78 / sensitivity;
  return (
    ((saturationLuxSeconds / (exposureSeconds * openFraction)) * 4 * effectiveFNumber ** 2) /
    LENS_TRANSMISSION
  );
}

const requireLux = (lux: number): number =>
  requireInterval('lampLux', lux, { minimum: 0, maximum: 1e16, unit: 'lx' });

/**
 * Light that passes a picture of a given size.
 *
 * Model: illuminance × area, exact for even light.
 *
 * @param lux                illuminance, lx; 0–1e16
 * @param areaSquareMillimetres  area, mm²; > 0
 * @returns luminous flux, lm
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example lumensOnArea(1_000_000, 20) // 20
 */
export function lumensOnArea(lux: number, areaSquareMillimetres: number): number {
  requireInterval('areaSquareMillimetres', areaSquareMillimetres, { above: 0, maximum: 1e6 });
  return (requireLux(lux) * areaSquareMillimetres) / 1e6;
}

/**
 * Radiation that a light brings with it.
 *
 * Model: illuminance ÷ luminous efficacy of the radiation. Heat glasses differ: read to about a stop.
 *
 * @param lux     illuminance, lx; 0–1e16
 * @param source  kind of light
 * @returns irradiance, W/mm²
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source cie-1931-observer
 * @source luminous-efficacy-article
 * @example irradianceWattsPerMm2(2_700_000, 'filament') // ≈ 0.1
 */
export function irradianceWattsPerMm2(lux: number, source: LightSourceId): number {
  return requireLux(lux) / (LIGHT_SOURCES[source].lumensPerWatt * 1e6);
}

/** Rise of temperature in one film frame's stay in the gate, K: the truth lies between the two. */
export interface FrameHeating {
  /** Heat spread evenly through the film. */
  readonly evenKelvin: number;
  /** Heat that stays at the surface which takes it up. */
  readonly surfaceKelvin: number;
}

/**
 * How much warmer a black part of the film gets while it passes the gate.
 *
 * Model: even rise E P ÷ (ρ c δ); surface rise (2 E ÷ k) × √(α P ÷ π) of a thick slab, α = k ÷ (ρ c).
 * Black film takes up all of it and gives nothing back. Approximate: bounds, with constants of cellulose
 * acetate that differ by a quarter from table to table.
 *
 * @param meanWattsPerMm2  irradiance averaged over the shutter's cycle, W/mm²; 0–1e6
 * @param filmFps          film rate, frames/s; > 0, at most 240
 * @returns rise within one film frame, K
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source materials-data-handbook
 * @source cellulose-acetate-table
 */
export function frameHeating(meanWattsPerMm2: number, filmFps: number): FrameHeating {
  const flux = wattsPerSquareMetre(meanWattsPerMm2);
  const stay = 1 / requireInterval('filmFps', filmFps, { above: 0, maximum: 240 });
  const { conductivityWattsPerMetreKelvin: conductivity } = FILM;
  const spread = conductivity / (FILM.densityKgPerCubicMetre * FILM.heatJoulesPerKgKelvin);
  return {
    evenKelvin: (flux * stay) / HEAT_OF_FILM,
    surfaceKelvin: ((2 * flux) / conductivity) * Math.sqrt((spread * stay) / Math.PI),
  };
}

const wattsPerSquareMetre = (wattsPerMm2: number): number =>
  requireInterval('meanWattsPerMm2', wattsPerMm2, { minimum: 0, maximum: 1e6, unit: 'W/mm²' }) *
  1e6;

/**
 * How long a film that stands in the light takes to become 100 K warmer.
 *
 * Model: ρ c δ × 100 ÷ E for black film that gives nothing back, so the real time is a little longer.
 *
 * @param wattsPerMm2  irradiance with the shutter open, W/mm²; > 0, at most 1e6
 * @returns time, s
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source materials-data-handbook
 * @source cellulose-acetate-table
 * @example secondsToHundredKelvin(0.02964) // ≈ 1
 */
export function secondsToHundredKelvin(wattsPerMm2: number): number {
  requireInterval('lampLux', wattsPerMm2, { above: 0, maximum: 1e6, unit: 'W/mm²' });
  return (HEAT_OF_FILM * 100) / wattsPerSquareMetre(wattsPerMm2);
}

/**
 * How much warmer than the room a film ends that stands in the light for good.
 *
 * Model: E ÷ h with h = 20 W/(m² K) of still air, from memory; a fan takes two thirds off.
 *
 * @param wattsPerMm2  irradiance with the shutter open, W/mm²; 0–1e6
 * @returns rise, K
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source from-memory
 * @example standingKelvin(0.001) // ≈ 50
 */
export function standingKelvin(wattsPerMm2: number): number {
  return wattsPerSquareMetre(wattsPerMm2) / STILL_AIR_WATTS_PER_SQUARE_METRE_KELVIN;
}

/**
 * Light that a film frame gets in one run.
 *
 * Model: E × d ÷ f, exact.
 *
 * @param lux           illuminance in the open gate, lx; 0–1e16
 * @param openFraction  open fraction; above 0, at most 1
 * @param filmFps       film rate, frames/s; > 0, at most 240
 * @returns dose, lx·h
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example doseOfRunLuxHours(3_600_000, 0.5, 20) // ≈ 25
 */
export function doseOfRunLuxHours(lux: number, openFraction: number, filmFps: number): number {
  requireInterval('openFraction', openFraction, { above: 0, maximum: 1 });
  requireInterval('filmFps', filmFps, { above: 0, maximum: 240 });
  return (requireLux(lux) * openFraction) / filmFps / 3600;
}
