import { requireInterval } from './errors.ts';

/** Limits of a vapour in the air of a workplace. */
export interface VapourLimit {
  readonly label: string;
  /** Grams in one mole. */
  readonly molarMassGrams: number;
  /** Grams in one millilitre of the liquid. */
  readonly gramsPerMillilitre: number;
  /** Average over a working day of eight hours, parts per million. */
  readonly dayPpm: number;
  /** Average over any fifteen minutes, parts per million. */
  readonly shortPpm: number;
  readonly source: string;
}

/**
 * The two vapours of a film bench: a cleaning alcohol, and what decaying acetate film gives off.
 * Limits of the United States; other countries have their own (the short limit of acetic acid is
 * 20 ppm in newer European tables, from memory). Older cleaners such as perchloroethylene or carbon
 * tetrachloride are left out on purpose: they have no place on a bench.
 */
export const VAPOUR_LIMITS = {
  isopropanol: {
    label: 'Isopropyl alcohol',
    molarMassGrams: 60.1,
    gramsPerMillilitre: 0.79,
    dayPpm: 400,
    shortPpm: 500,
    source: 'niosh-guide-isopropyl',
  },
  'acetic-acid': {
    label: 'Acetic acid (vinegar smell)',
    molarMassGrams: 60.1,
    gramsPerMillilitre: 1.05,
    dayPpm: 10,
    shortPpm: 15,
    source: 'niosh-idlh-acetic-acid',
  },
} as const satisfies Record<string, VapourLimit>;

/** Key of a vapour in {@link VAPOUR_LIMITS}. */
export type VapourName = keyof typeof VAPOUR_LIMITS;

/** Litres that one mole of a gas takes at 25 °C and one atmosphere. */
export const MOLAR_LITRES = 24.45;

/**
 * Weight of a vapour in a cubic metre of air.
 *
 * Model: ppm × molar mass ÷ 24.45 L, exact for an ideal gas at 25 °C and one atmosphere; 3 % more at
 * 15 °C.
 *
 * @param partsPerMillion  parts per million by volume; 0–10⁶
 * @param molarMassGrams   molar mass, g; > 0
 * @returns mg/m³
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ccohs-conversion
 * @example milligramsPerCubicMetre(400, 60.1) // ≈ 983.23
 */
export function milligramsPerCubicMetre(partsPerMillion: number, molarMassGrams: number): number {
  requireInterval('partsPerMillion', partsPerMillion, { minimum: 0, maximum: 1e6 });
  requireInterval('molarMassGrams', molarMassGrams, { above: 0 });
  return (partsPerMillion * molarMassGrams) / MOLAR_LITRES;
}

/**
 * Parts per million from the weight of a vapour in a cubic metre of air.
 *
 * Model: mg/m³ × 24.45 L ÷ molar mass, exact for an ideal gas at 25 °C and one atmosphere.
 *
 * @param milligrams      mg/m³; ≥ 0
 * @param molarMassGrams  molar mass, g; > 0
 * @returns parts per million by volume
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ccohs-conversion
 * @example partsPerMillion(25, 60.1) // ≈ 10.17
 */
export function partsPerMillion(milligrams: number, molarMassGrams: number): number {
  requireInterval('milligrams', milligrams, { minimum: 0 });
  requireInterval('molarMassGrams', molarMassGrams, { above: 0 });
  return (milligrams * MOLAR_LITRES) / molarMassGrams;
}

/**
 * Average vapour in a room where a liquid dries off all the time.
 *
 * Model: millilitres an hour × density ÷ (room × air changes an hour): what dries off an hour is
 * carried away by the air that leaves an hour. It holds after several air changes and for air that
 * mixes at once; close to the cloth the vapour is many times denser.
 *
 * @param millilitresPerHour   liquid that dries off, mL/h; ≥ 0
 * @param gramsPerMillilitre   density of the liquid, g/mL; > 0
 * @param roomCubicMetres      volume of the room, m³; > 0
 * @param airChangesPerHour    how often an hour the air of the room is renewed; > 0
 * @returns mg/m³
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example steadyMilligramsPerCubicMetre(10, 0.79, 40, 0.5) // ≈ 395
 */
export function steadyMilligramsPerCubicMetre(
  millilitresPerHour: number,
  gramsPerMillilitre: number,
  roomCubicMetres: number,
  airChangesPerHour: number,
): number {
  requireInterval('millilitresPerHour', millilitresPerHour, { minimum: 0 });
  requireInterval('gramsPerMillilitre', gramsPerMillilitre, { above: 0 });
  requireInterval('roomCubicMetres', roomCubicMetres, { above: 0 });
  requireInterval('airChangesPerHour', airChangesPerHour, { above: 0 });
  const milligramsPerHour = millilitresPerHour * gramsPerMillilitre * 1000;
  return milligramsPerHour / (roomCubicMetres * airChangesPerHour);
}
