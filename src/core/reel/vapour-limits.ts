import { OutOfRangeError, requireInterval } from '../../quantity/errors.ts';

/** A limit for the air of a workplace, as one body publishes it. */
export interface ExposureLimit {
  readonly publisher: string;
  readonly year: string;
  /** `in force` as law where the body rules; `recommended` otherwise. */
  readonly standing: 'in force' | 'recommended';
  /** Average over a working day, parts per million (ml/m³). */
  readonly dayPpm: number;
  /** Average over fifteen minutes, parts per million; absent where the body sets none. */
  readonly shortPpm?: number;
  readonly note: string;
  /** Id in content/sources.yaml. */
  readonly source: string;
}

/** Bodies whose limits were read. */
export type LimitPublisher = 'mak' | 'osha' | 'niosh';

/** A vapour of the film bench, with every limit that was read for it. */
export interface Vapour {
  readonly label: string;
  /** Grams in one mole. */
  readonly molarMassGrams: number;
  /** Grams in one millilitre of the liquid. */
  readonly gramsPerMillilitre: number;
  /** Least share of vapour in air that burns, per cent; absent where none was read. */
  readonly lowerExplosivePercent?: number;
  /** Lowest temperature at which the liquid gives off vapour that a spark lights, °C. */
  readonly flashPointCelsius?: number;
  readonly limits: Partial<Readonly<Record<LimitPublisher, ExposureLimit>>>;
}

/**
 * The two vapours of a film bench: a cleaning alcohol, and what decaying acetate film gives off.
 * Older cleaners such as perchloroethylene or carbon tetrachloride are left out on purpose: they have
 * no place on a bench.
 *
 * @source mak-isopropanol-2018, osha-pel-isopropanol, niosh-guide-isopropyl, osha-pel-acetic, niosh-idlh-acetic-acid
 */
export const VAPOURS = {
  isopropanol: {
    label: 'Isopropyl alcohol',
    molarMassGrams: 60.1,
    gramsPerMillilitre: 0.79,
    lowerExplosivePercent: 2,
    flashPointCelsius: 12,
    limits: {
      mak: {
        publisher: 'MAK Commission of the DFG, Germany',
        year: '2018, in English 2019',
        standing: 'recommended',
        dayPpm: 200,
        shortPpm: 400,
        note: 'Peak category II, factor 2: at most twice the limit for a short time',
        source: 'mak-isopropanol-2018',
      },
      osha: {
        publisher: 'OSHA, United States',
        year: 'older than 1989',
        standing: 'in force',
        dayPpm: 400,
        note: 'The 15-minute limit of 500 ppm, adopted in 1989, was sent back by a court and is not in force',
        source: 'osha-pel-isopropanol',
      },
      niosh: {
        publisher: 'NIOSH, United States',
        year: 'undated guide',
        standing: 'recommended',
        dayPpm: 400,
        shortPpm: 500,
        note: 'Advice, not binding',
        source: 'niosh-guide-isopropyl',
      },
    },
  },
  'acetic-acid': {
    label: 'Acetic acid (vinegar smell)',
    molarMassGrams: 60.1,
    gramsPerMillilitre: 1.05,
    limits: {
      osha: {
        publisher: 'OSHA, United States',
        year: 'older than 1989',
        standing: 'in force',
        dayPpm: 10,
        note: 'No limit for a short time; complaints below 10 ppm are on record',
        source: 'osha-pel-acetic',
      },
      niosh: {
        publisher: 'NIOSH, United States',
        year: '1994',
        standing: 'recommended',
        dayPpm: 10,
        shortPpm: 15,
        note: 'The list of the European Union allows 20 ppm for a short time (from memory)',
        source: 'niosh-idlh-acetic-acid',
      },
    },
  },
} as const satisfies Record<string, Vapour>;

/** Key of a vapour in {@link VAPOURS}. */
export type VapourName = keyof typeof VAPOURS;

/**
 * The limit of one body for a vapour, or the strictest that was read: the lowest for a working day,
 * and among equals the one that also limits a short time lowest.
 *
 * @param vapour  key of a vapour
 * @param choice  a body, or `strictest`
 * @returns the limit
 * @throws {OutOfRangeError} for a body whose limit for this vapour was not read
 * @source mak-isopropanol-2018, osha-pel-isopropanol, niosh-guide-isopropyl, osha-pel-acetic, niosh-idlh-acetic-acid
 */
export function exposureLimit(
  vapour: VapourName,
  choice: LimitPublisher | 'strictest',
): ExposureLimit {
  const { limits, label }: Vapour = VAPOURS[vapour];
  if (choice !== 'strictest') {
    const limit = limits[choice];
    if (limit === undefined) {
      throw new OutOfRangeError(
        'limit',
        choice,
        `another publisher: its limit for ${label.toLowerCase()} was not read`,
      );
    }
    return limit;
  }
  const short = ({ shortPpm }: ExposureLimit): number => shortPpm ?? Number.POSITIVE_INFINITY;
  const [first, ...others] = Object.values(limits);
  if (first === undefined) throw new OutOfRangeError('limit', choice, 'a vapour with a limit');
  return others.reduce(
    (strictest, limit) =>
      limit.dayPpm < strictest.dayPpm ||
      (limit.dayPpm === strictest.dayPpm && short(limit) < short(strictest))
        ? limit
        : strictest,
    first,
  );
}

/** Parts per million in one per cent by volume. */
const PPM_IN_PERCENT = 10_000;

/**
 * Share of the lower explosive limit that a vapour reaches. Fire services and gas alarms count in
 * this share; at a tenth of the limit people leave a room.
 *
 * Model: ppm ÷ (lower explosive limit × 10 000) × 100, exact. For air that is mixed: over a wet cloth
 * or an open bottle the vapour can always burn when the liquid is warmer than its flash point.
 *
 * @param ppm                    vapour in the air, parts per million by volume; ≥ 0
 * @param lowerExplosivePercent  least share of vapour that burns, % by volume; > 0
 * @returns share of the explosive limit, %; ≥ 0
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source niosh-guide-isopropyl
 * @example explosiveSharePercent(200, 2) // 1
 */
export function explosiveSharePercent(ppm: number, lowerExplosivePercent: number): number {
  requireInterval('ppm', ppm, { minimum: 0 });
  requireInterval('lowerExplosivePercent', lowerExplosivePercent, { above: 0, maximum: 100 });
  return (ppm / (lowerExplosivePercent * PPM_IN_PERCENT)) * 100;
}

/** Grams in one mole of dry air. */
const AIR_GRAMS = 28.96;

/**
 * How many times heavier than air an undiluted vapour is. What is heavier sinks: bad air lies in the
 * can, on the table and on the floor.
 *
 * Model: molar mass ÷ 28.96 g, exact for ideal gases at one temperature.
 *
 * @param molarMassGrams  molar mass, g; > 0
 * @returns ratio to air
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source arithmetic
 * @example heavierThanAir(60.1) // ≈ 2.075
 */
export function heavierThanAir(molarMassGrams: number): number {
  requireInterval('molarMassGrams', molarMassGrams, { above: 0 });
  return molarMassGrams / AIR_GRAMS;
}

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
