import {
  depthOfFieldMillimetres,
  effectiveFNumber,
  filmDistanceMillimetres,
  magnification,
  sensorDistanceMillimetres,
} from '../../../core/gate/lens.ts';
import {
  mirrorLengthMillimetres,
  shortestFocalLengthMillimetres,
  squarenessDegrees,
} from '../../../core/gate/lens-place.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ValuesOf } from '../../machine/types.ts';
import { gatePictureWidth, widthStep } from '../gate-picture-width.ts';
import { isTooHigh, pictureHeightOf, tooHighVerdict } from '../picture-height.ts';
import { inputs } from './inputs.ts';

/** Room between the machine and the lens that a hand needs to thread, mm; practice. */
const SPARE_MILLIMETRES = 10;

type Values = ValuesOf<typeof inputs>;
type Found = ReturnType<typeof findLensPlace>;

function findLensPlace(values: Values) {
  const { focalLengthMillimetres, rimMillimetres, noseMillimetres, fNumber, pixelsAcross } = values;
  const width = gatePictureWidth(values.gauge, values.pictureWidthMillimetres);
  const filledPixels = (pixelsAcross * values.fillPercent) / 100;
  const scale = magnification(
    (values.sensorWidthMillimetres * values.fillPercent) / 100,
    width.millimetres,
  );
  const toFilm = filmDistanceMillimetres(focalLengthMillimetres, scale);
  const toSensor = sensorDistanceMillimetres(focalLengthMillimetres, scale);
  const depth = depthOfFieldMillimetres(
    effectiveFNumber(fNumber, scale),
    (values.blurPixels * values.sensorWidthMillimetres) / pixelsAcross,
    scale,
  );
  const squareness = squarenessDegrees(depth, width.millimetres);
  return {
    width,
    scale,
    toFilm,
    toSensor,
    depth,
    squareness,
    height: pictureHeightOf(
      pixelsAcross,
      values.pixelsDown,
      values.fillPercent,
      width.widthToHeight,
    ),
    free: toFilm - rimMillimetres,
    shortestFocalLength: shortestFocalLengthMillimetres(
      noseMillimetres + SPARE_MILLIMETRES + rimMillimetres,
      scale,
    ),
    pixelsPerMillimetre: filledPixels / width.millimetres,
    mirror:
      values.mirrorMillimetres === undefined
        ? undefined
        : mirrorLengthMillimetres(
            width.millimetres,
            focalLengthMillimetres,
            scale,
            fNumber,
            values.mirrorMillimetres,
          ),
  };
}

function verdictFor(found: Found, { noseMillimetres }: Values): Outcome['verdict'] {
  const { free, shortestFocalLength, height, toFilm, toSensor } = found;
  if (isTooHigh(height)) return tooHighVerdict(height);
  if (free < noseMillimetres + SPARE_MILLIMETRES) {
    const focal = Math.ceil(shortestFocalLength - 1e-9);
    return {
      level: 'stop',
      sentence: `The lens would stand ${formatQuantity(free, 'mm', 2)} from the film, and the machine needs ${formatQuantity(noseMillimetres + SPARE_MILLIMETRES, 'mm', 2)}: take a lens of at least ${formatQuantity(focal, 'mm', 4)}, or a mirror.`,
    };
  }
  return {
    level: 'good',
    sentence: `Put the middle of the lens ${formatQuantity(toFilm, 'mm', 3)} from the film and the sensor ${formatQuantity(toSensor, 'mm', 3)} behind it, at the height of the gate.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'lens-place',
  title: 'Place of the lens',
  question:
    'Where do lens and sensor stand, does the lens clear the machine, and how square must it be?',
  chapter: 'gate/set-up',
  inputs,
  model:
    'Thin lens: film to lens is focal length × (1 + 1 ÷ magnification), lens to sensor focal length × (1 + magnification). Both count from the middle of the lens, which in a thick lens is not a point that can be marked, so expect a few millimetres of difference, and finish by focusing. The camera is square enough while both sides of the picture stay within the depth that looks sharp. The mirror stands at 45°.',
  answers: {
    magnification: 'Magnification',
    toFilmMillimetres: 'Film to lens',
    toSensorMillimetres: 'Lens to sensor',
    totalMillimetres: 'Film to sensor',
    freeMillimetres: 'Film to the front edge of the lens',
    shortestFocalMillimetres: 'Shortest lens that clears the machine',
    pixelsPerMillimetre: 'Pixels for each millimetre of film',
    depthMillimetres: 'Depth that looks sharp',
    squareDegrees: 'Square to within',
    squareMillimetres: 'That is, over 100 mm of a ruler',
    mirrorMillimetres: 'Length of a mirror at 45°, at least',
  },
  find: findLensPlace,
  outcome(found, values) {
    const { toFilm, toSensor, squareness, free, mirror } = found;
    const clears = free >= values.noseMillimetres + SPARE_MILLIMETRES;
    return {
      verdict: verdictFor(found, values),
      answers: {
        magnification: quantity(found.scale, 'one'),
        toFilmMillimetres: quantity(toFilm, 'mm'),
        toSensorMillimetres: quantity(toSensor, 'mm'),
        totalMillimetres: quantity(toFilm + toSensor, 'mm'),
        freeMillimetres: quantity(free, 'mm', 3, { level: clears ? 'good' : 'stop' }),
        shortestFocalMillimetres: quantity(found.shortestFocalLength, 'mm'),
        pixelsPerMillimetre: quantity(found.pixelsPerMillimetre, 'px', 4),
        depthMillimetres: quantity(found.depth, 'mm', 2),
        squareDegrees: quantity(squareness, 'deg', 2, { note: 'To either side.' }),
        squareMillimetres: quantity(100 * Math.tan((squareness * Math.PI) / 180), 'mm', 2),
        ...(mirror === undefined
          ? {}
          : {
              mirrorMillimetres: quantity(mirror, 'mm', 3, {
                note: 'Take one twice as long, with its coating on the front.',
              }),
            }),
      },
    };
  },
  working({ width, scale, depth }, told, values) {
    const focal = formatQuantity(values.focalLengthMillimetres, 'mm');
    return [
      widthStep(width),
      {
        words: 'Film to lens.',
        sum: `${focal} × (1 + 1 ÷ ${formatNumber(scale)}) = ${told('toFilmMillimetres')}`,
      },
      {
        words: 'Lens to sensor.',
        sum: `${focal} × (1 + ${formatNumber(scale)}) = ${told('toSensorMillimetres')}`,
      },
      {
        words: 'Less the front half of the lens.',
        sum: `${told('toFilmMillimetres')} − ${formatQuantity(values.rimMillimetres, 'mm')} = ${told('freeMillimetres')}`,
      },
      {
        words: 'The picture leaves the depth at its sides when the camera is turned by more.',
        sum: `atan(${formatQuantity(depth, 'mm', 2)} ÷ ${formatQuantity(width.millimetres, 'mm', 4)}) = ${told('squareDegrees')}`,
      },
    ];
  },
  cautions: [
    'Lamp off, plug pulled and gate cold while you measure in the machine. Put nothing made of metal into the gate.',
    'Never look through a lens into a burning lamp.',
  ],
  sources: [
    'arithmetic',
    'savazzi-depth-of-field-table',
    'photomacrography-effective-aperture',
    'smpte-154-157',
    'common-practice',
  ],
});
