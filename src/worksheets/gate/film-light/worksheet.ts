import {
  doseOfRunLuxHours,
  frameHeating,
  irradianceWattsPerMm2,
  lumensOnArea,
  neededLux,
  secondsToHundredKelvin,
  standingKelvin,
} from '../../../core/gate/film-light.ts';
import { effectiveFNumber, magnification } from '../../../core/gate/lens.ts';
import { ratioStops } from '../../../core/gate/light-stops.ts';
import { formatDuration, formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ValuesOf } from '../../machine/types.ts';
import { gatePictureWidth } from '../gate-picture-width.ts';
import { inputs } from './inputs.ts';

/** The most that a projection lamp is planned with, lx; derived, give or take a stop. */
const BRIGHTEST_LUX = 10_000_000;
/** Mean power at which lasting marks began in published trials on 35 mm film, W/mm². */
const MARKS_WATTS_PER_MM2 = 0.2;
/** Surplus of light that is no more than the guess of the sum. */
const SURPLUS_STOPS = 1.5;
/** Heating of one frame's stay below which the light is called cool, K; practice of this book. */
const COOL_KELVIN = 10;

type Found = ReturnType<typeof findFilmLight>;

function findFilmLight(values: ValuesOf<typeof inputs>) {
  const width = gatePictureWidth(values.gauge, values.pictureWidthMillimetres);
  const scale = magnification(
    (values.sensorWidthMillimetres * values.fillPercent) / 100,
    width.millimetres,
  );
  const openFraction = values.openPercent / 100;
  const effective = effectiveFNumber(values.fNumber, scale);
  const needed = neededLux({ ...values, openFraction, effectiveFNumber: effective });
  const lamp = values.lampLux ?? BRIGHTEST_LUX;
  const openWattsPerMm2 = irradianceWattsPerMm2(lamp, values.source);
  const area = width.millimetres ** 2 / width.widthToHeight;
  return {
    width,
    scale,
    effective,
    needed,
    lamp,
    neededLumens: lumensOnArea(needed, area),
    surplusStops: ratioStops(lamp / needed),
    openWattsPerMm2,
    meanWattsPerMm2: openWattsPerMm2 * openFraction,
    heating: frameHeating(openWattsPerMm2 * openFraction, values.filmFps),
    standing: standingKelvin(openWattsPerMm2),
    doseLuxHours: doseOfRunLuxHours(lamp, openFraction, values.filmFps),
  };
}

/** What a film meets that stops with the light on. */
function standingWords({ standing, openWattsPerMm2 }: Found): string {
  return standing > 100
    ? `100 K hotter after ${formatDuration(secondsToHundredKelvin(openWattsPerMm2))}`
    : `ends ${formatQuantity(standing, 'kelvin', 2)} above the room in still air`;
}

function verdictFor(found: Found, isMeasured: boolean): Outcome['verdict'] {
  const { meanWattsPerMm2, surplusStops, heating, needed } = found;
  const lux = `${formatNumber(Number(needed.toPrecision(2)))} lux`;
  const guess = isMeasured ? '' : ' The light was not measured, so the brightest lamp is assumed.';
  if (meanWattsPerMm2 >= MARKS_WATTS_PER_MM2) {
    return {
      level: 'stop',
      sentence: `This light can mark the film while it runs. Take it down to about ${lux} before the film.${guess}`,
    };
  }
  if (surplusStops < -SURPLUS_STOPS) {
    return {
      level: 'care',
      sentence: `The camera needs about ${lux}, ${formatQuantity(-surplusStops, 'stop', 2)} more than there is: open the lens or raise the sensitivity before you add light.`,
    };
  }
  if (surplusStops > SURPLUS_STOPS) {
    return {
      level: 'care',
      sentence: `The camera needs about ${lux}; the gate has ${formatQuantity(surplusStops, 'stop', 2)} more. Take it out before the film, not at the camera.${guess}`,
    };
  }
  return heating.surfaceKelvin <= COOL_KELVIN
    ? {
        level: 'good',
        sentence: `About as much light as the camera needs, and it warms the film by no more than ${formatQuantity(heating.surfaceKelvin, 'kelvin', 2)} in a frame.`,
      }
    : {
        level: 'care',
        sentence: `The camera can use this light, but it warms the film by up to ${formatQuantity(heating.surfaceKelvin, 'kelvin', 2)} in a frame: open the lens and take light out, or use a cooler source.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'film-light',
  title: 'Light and heat on the film',
  question: 'How much light does the camera need in the gate, and what does it do to the film?',
  chapter: 'gate/set-up',
  inputs,
  model:
    'The camera needs 78 ÷ ISO lux seconds at the sensor to be just full, through a lens that passes nine tenths of the light; that is for diffused light, and a condenser needs several times less. Heat goes with the light by the kind of lamp: 27, 100 or 300 lumens for each watt of radiation, a filament at 3,200 K by Planck’s law, the same behind glass that holds back infrared, and a white LED. The film is taken as black acetate 0.152 mm thick, with constants from tables. Within a frame it warms by something between the two figures, and then cools. The 78 and the cooling of still air are from memory, the brightest lamp is worked out from lamp data, and no measurement in a small gate was found: read the answers to about a stop.',
  answers: {
    neededLux: 'Light the camera needs in the open gate',
    neededLumens: 'The same as a flow through the picture',
    surplusStops: 'Light in the gate beyond that',
    openWattsPerMm2: 'Heat in the open gate',
    meanWattsPerMm2: 'Heat while it runs, mean',
    evenKelvin: 'Warmer in one frame, heat spread evenly',
    surfaceKelvin: 'Warmer in one frame, at the surface',
    standing: 'Film that stands in it',
    doseLuxHours: 'Dose of one run',
  },
  find: findFilmLight,
  outcome(found, { lampLux }) {
    const { meanWattsPerMm2, heating, standing } = found;
    return {
      verdict: verdictFor(found, lampLux !== undefined),
      answers: {
        neededLux: quantity(Number(found.needed.toPrecision(2)), 'lx', 2),
        neededLumens: quantity(found.neededLumens, 'lm', 2),
        surplusStops: quantity(found.surplusStops, 'stop', 2, {
          note: lampLux === undefined ? 'Not measured: ten million lux assumed.' : 'As measured.',
        }),
        openWattsPerMm2: quantity(found.openWattsPerMm2, 'wattsPerMm2', 2),
        meanWattsPerMm2: quantity(meanWattsPerMm2, 'wattsPerMm2', 2, {
          level: meanWattsPerMm2 >= MARKS_WATTS_PER_MM2 ? 'stop' : 'good',
          note: 'Lasting marks began at 0.20 to 0.30 in trials with 35 mm film.',
        }),
        evenKelvin: quantity(heating.evenKelvin, 'kelvin', 2),
        surfaceKelvin: quantity(heating.surfaceKelvin, 'kelvin', 2),
        standing: words(standingWords(found), {
          level: standing > COOL_KELVIN ? 'stop' : 'care',
          note: 'Black film, with the shutter open.',
        }),
        doseLuxHours: quantity(found.doseLuxHours, 'luxHours', 2),
      },
    };
  },
  working({ scale, effective, needed, lamp, openWattsPerMm2, meanWattsPerMm2 }, told, values) {
    return [
      {
        words: 'The lens close to works like a smaller opening.',
        sum: `${formatNumber(values.fNumber)} × (1 + ${formatNumber(scale)}) = ${formatNumber(effective)}`,
      },
      {
        words: 'Light that just fills the sensor.',
        sum: `78 ÷ (${formatNumber(values.sensitivity)} × ${formatNumber(values.exposureSeconds)} × ${formatNumber(values.openPercent / 100)}) × 4 × ${formatNumber(effective)}² ÷ 0.9 = ${formatNumber(Number(needed.toPrecision(3)))} lx`,
      },
      {
        words: 'What is too much, in doublings; both in thousands of lux.',
        sum: `log2(${formatNumber(lamp / 1000)} ÷ ${formatNumber(needed / 1000)}) = ${told('surplusStops')}`,
      },
      {
        words: 'Heat in the open gate, and its mean over the turning shutter.',
        sum: `${told('openWattsPerMm2')} × ${formatNumber(values.openPercent / 100)} = ${told('meanWattsPerMm2')}`,
      },
      {
        words:
          'Spread evenly, one frame long, through 0.152 mm of film that takes 0.00195 J/mm³ for each kelvin.',
        sum: `${formatQuantity(meanWattsPerMm2, 'wattsPerMm2', 2)} × ${formatQuantity(1 / values.filmFps, 's')} ÷ (0.152 mm × 0.00195 J/mm³) = ${told('evenKelvin')}; standing in ${formatQuantity(openWattsPerMm2, 'wattsPerMm2', 2)}: ${told('standing')}`,
      },
    ];
  },
  cautions: [
    'Never let a film stand in the light of a filament lamp: it bends within a second or two and may burn. Lamp off first, motor off second.',
    'A new lamp, its driver and any wiring inside the housing are work for a licensed electrician; local rules come first. Keep the fan, the heat glass and the flap.',
  ],
  sources: [
    'from-memory',
    'arithmetic',
    'kolb-1949',
    'smpe-projection-1937',
    'cie-1931-observer',
    'luminous-efficacy-article',
    'materials-data-handbook',
    'cellulose-acetate-table',
    'common-practice',
  ],
});
