import { effectiveFNumber, magnification } from '../../../core/gate/lens.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import {
  diffractionLimitPerMillimetre,
  filmPixelMicrometres,
  pixelsForDetail,
  pixelsOnPicture,
  resolutionLimit,
  samplingLimitPerMillimetre,
  type ResolutionLimit,
} from '../../../core/gate/sampling.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome, ValuesOf } from '../../machine/types.ts';
import { gatePictureWidth, widthStep } from '../gate-picture-width.ts';
import {
  HEIGHT_LABELS,
  heightAnswers,
  isTooHigh,
  pictureHeightOf,
  tooHighVerdict,
} from '../picture-height.ts';
import { inputs } from './inputs.ts';

type Values = ValuesOf<typeof inputs>;
type Found = ReturnType<typeof findLimits>;

function findLimits(values: Values) {
  const { pixelsAcross, pixelsDown, fillPercent, filmLinePairs } = values;
  const width = gatePictureWidth(values.gauge, values.pictureWidthMillimetres);
  const pixels = pixelsOnPicture(pixelsAcross, fillPercent / 100);
  const imageWidth = (values.sensorWidthMillimetres * fillPercent) / 100;
  const scale = magnification(imageWidth, width.millimetres);
  const effective = effectiveFNumber(values.fNumber, scale);
  const samplingLimit = samplingLimitPerMillimetre(width.millimetres, pixels);
  const diffractionLimit = diffractionLimitPerMillimetre(effective, scale);
  return {
    width,
    pixels,
    height: pictureHeightOf(pixelsAcross, pixelsDown, fillPercent, width.widthToHeight),
    filmPixelMicrometres: filmPixelMicrometres(width.millimetres, pixels),
    scale,
    effective,
    samplingLimit,
    diffractionLimit,
    limit: resolutionLimit(samplingLimit, diffractionLimit, filmLinePairs),
    pixelsNeeded: pixelsForDetail(width.millimetres, filmLinePairs),
  };
}

const LIMIT_WORDS: Readonly<Record<ResolutionLimit, string>> = {
  film: 'the film',
  pixels: 'the pixels',
  diffraction: 'the lens opening',
};

function verdictFor(
  { height, limit, pixels, pixelsNeeded }: Found,
  { filmLinePairs }: Values,
): Outcome['verdict'] {
  if (isTooHigh(height)) return tooHighVerdict(height);
  const detail = formatQuantity(filmLinePairs, 'lpPerMm');
  if (limit === 'film') {
    return {
      level: 'good',
      sentence: `Pixels and lens carry ${detail}. Only a trial on your own film can tell whether it holds more.`,
    };
  }
  if (limit === 'pixels') {
    return {
      level: 'care',
      sentence: `The pixels set the limit: ${detail} of film detail asks for ${formatNumber(pixelsNeeded)} pixels across the picture.`,
    };
  }
  return {
    level: 'care',
    sentence: `The lens opening sets the limit: open the lens${pixels >= pixelsNeeded ? '' : ', though the pixels would come next'}.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'sampling',
  title: 'Pixels and detail',
  question: 'Do the pixels and the lens carry the detail that is on the film?',
  chapter: 'gate/lens',
  inputs,
  model:
    'Two pixels for each line pair, at least. A camera with a colour mosaic resolves less, so treat the figure as a ceiling. The limit of the lens is Rayleigh’s for a perfect lens in green light; a tenth of the contrast is left there. The lowest of the three sets the limit; where they are nearly equal, together they give less than the lowest.',
  answers: {
    picturePixels: 'Pixels across the picture',
    ...HEIGHT_LABELS,
    filmPixelMicrometres: 'One pixel on the film',
    samplingLimit: 'The pixels carry up to',
    diffractionLimit: 'The lens shows up to',
    pixelsNeeded: 'Pixels that the film detail asks for',
    limitedBy: 'The limit is set by',
    pixelsPerInch: 'Pixels per inch of film',
  },
  find: findLimits,
  outcome(found, values) {
    const { width, pixels, limit } = found;
    return {
      verdict: verdictFor(found, values),
      answers: {
        picturePixels: quantity(pixels, 'px', 4),
        ...heightAnswers(found.height, width.widthToHeight),
        filmPixelMicrometres: quantity(found.filmPixelMicrometres, 'um'),
        samplingLimit: quantity(found.samplingLimit, 'lpPerMm'),
        diffractionLimit: quantity(found.diffractionLimit, 'lpPerMm'),
        pixelsNeeded: quantity(found.pixelsNeeded, 'px', 4),
        limitedBy: words(LIMIT_WORDS[limit], { level: limit === 'film' ? 'good' : 'care' }),
        pixelsPerInch: quantity((25.4 * pixels) / width.millimetres, 'px'),
      },
    };
  },
  working({ width, scale, effective }, told, values) {
    const millimetres = formatQuantity(width.millimetres, 'mm', 4);
    return [
      widthStep(width),
      {
        words: 'The picture gets its share of the pixels.',
        sum: `${formatNumber(values.pixelsAcross)} × ${formatNumber(values.fillPercent)} % = ${told('picturePixels')}`,
      },
      {
        words: 'Half as many line pairs lie on its width.',
        sum: `${told('picturePixels')} ÷ (2 × ${millimetres}) = ${told('samplingLimit')}`,
      },
      {
        words: 'The lens: magnification and effective f-number first, then Rayleigh’s rule.',
        sum: `${formatNumber(scale)} ÷ (1.22 × 0.00055 mm × ${formatNumber(effective)}) = ${told('diffractionLimit')}`,
      },
      {
        words: 'What the film asks for: two pixels for each line pair.',
        sum: `2 × ${formatQuantity(values.filmLinePairs, 'lpPerMm')} × ${millimetres}, rounded up = ${told('pixelsNeeded')}`,
      },
    ];
  },
  cautions: [
    'More pixels than the detail asks for draw the grain more finely, and show nothing else. Judge on your own film, at the size it will be seen.',
    'Two archives that publish their practice take more pixels than this sum asks for, so that grain and picture edge are recorded too: 2048 × 1556 for 8 mm, Super 8 and 16 mm in one, 2560 × 1875 for 8 mm and Super 8 in the other.',
  ],
  sources: [
    'arithmetic',
    'video-compression-guide',
    'fiaf-choosing-a-film-scanner',
    'nypl-ami-film-2020',
    'uga-film',
    'smpte-154-157',
    'from-memory',
  ],
});
