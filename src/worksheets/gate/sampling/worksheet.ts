import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
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
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { gatePictureWidth, widthStep } from '../gate-picture-width.ts';
import {
  fNumberInput,
  fillPercentInput,
  pictureGaugeInput,
  pictureWidthInput,
  pixelsAcrossInput,
  pixelsDownInput,
  sensorWidthInput,
} from '../lens-inputs.ts';
import { heightAnswers, isTooHigh, pictureHeightOf, tooHighVerdict } from '../picture-height.ts';
import { defineWorksheet, type Outcome } from '../../machine/types.ts';

interface Entries {
  readonly gauge: GaugeId;
  readonly pictureWidthMillimetres: number | undefined;
  readonly sensorWidthMillimetres: number;
  readonly pixelsAcross: number;
  readonly pixelsDown: number | undefined;
  readonly fillPercent: number;
  readonly fNumber: number;
  readonly filmLinePairs: number;
}

function limitsOf(entries: Entries) {
  const { gauge, pictureWidthMillimetres, sensorWidthMillimetres, fillPercent } = entries;
  const width = gatePictureWidth(gauge, pictureWidthMillimetres);
  const pixels = pixelsOnPicture(entries.pixelsAcross, fillPercent / 100);
  const scale = magnification((sensorWidthMillimetres * fillPercent) / 100, width.millimetres);
  const effective = effectiveFNumber(entries.fNumber, scale);
  const samplingLimit = samplingLimitPerMillimetre(width.millimetres, pixels);
  const diffractionLimit = diffractionLimitPerMillimetre(effective, scale);
  return {
    width,
    pixels,
    height: pictureHeightOf(
      entries.pixelsAcross,
      entries.pixelsDown,
      fillPercent,
      width.widthToHeight,
    ),
    scale,
    effective,
    samplingLimit,
    diffractionLimit,
    limit: resolutionLimit(samplingLimit, diffractionLimit, entries.filmLinePairs),
  };
}

const LIMIT_WORDS: Readonly<Record<ResolutionLimit, string>> = {
  film: 'the film',
  pixels: 'the pixels',
  diffraction: 'the lens opening',
};

function verdictFor(
  limit: ResolutionLimit,
  film: number,
  needed: number,
  isEnough: boolean,
): Outcome['verdict'] {
  const detail = formatQuantity(film, 'lpPerMm');
  if (limit === 'film') {
    return {
      level: 'good',
      sentence: `Pixels and lens carry ${detail}. Whether your film holds more than that, only your film can tell.`,
    };
  }
  if (limit === 'pixels') {
    return {
      level: 'care',
      sentence: `The pixels set the limit: ${detail} of film detail ask for ${formatNumber(needed)} pixels across the picture.`,
    };
  }
  return {
    level: 'care',
    sentence: `The lens opening sets the limit: open the lens${isEnough ? '' : ', though the pixels would come next'}.`,
  };
}

export const worksheet = defineWorksheet({
  id: 'sampling',
  title: 'Pixels and detail',
  question: 'Do the pixels and the lens carry the detail that is on the film?',
  chapter: 'gate/lens',
  inputs: {
    gauge: pictureGaugeInput,
    pictureWidthMillimetres: {
      ...pictureWidthInput,
      help: 'Empty: the picture that a projector of this gauge shows.',
    },
    sensorWidthMillimetres: {
      ...sensorWidthInput,
      help: 'Width of the part that records, from the camera’s data sheet. The type in inches is no width.',
    },
    pixelsAcross: pixelsAcrossInput,
    pixelsDown: pixelsDownInput,
    fillPercent: fillPercentInput,
    fNumber: {
      ...fNumberInput,
      default: '5.6',
      accepted: '5.6 or 4',
      help: 'As set. Pupil ratio 1 is assumed.',
    },
    filmLinePairs: {
      kind: 'quantity',
      label: 'Detail on the film',
      unit: 'lpPerMm',
      minimum: 5,
      maximum: 400,
      default: '60',
      accepted: '60 or 100 lp/mm',
      help: 'Line pairs per millimetre. From memory: amateur reversal film about 50 to 60 for faint detail, 100 for strong; most home films hold less.',
    },
  },
  model:
    'Two pixels for each line pair, at least. A camera with a colour mosaic stays some way below that, so treat the figure as a ceiling. The limit of the lens is Rayleigh’s for a perfect lens in green light; a tenth of the contrast is left there. The lowest of the three sets the limit; near equality they add up to less than the lowest.',
  compute(entries) {
    const { filmLinePairs } = entries;
    const { width, pixels, height, samplingLimit, diffractionLimit, limit } = limitsOf(entries);
    const needed = pixelsForDetail(width.millimetres, filmLinePairs);
    return {
      verdict: isTooHigh(height)
        ? tooHighVerdict(height)
        : verdictFor(limit, filmLinePairs, needed, pixels >= needed),
      answers: {
        picturePixels: quantityAnswer('Pixels across the picture', pixels, 'px', 4),
        ...heightAnswers(height, width.widthToHeight),
        filmPixelMicrometres: quantityAnswer(
          'One pixel on the film',
          filmPixelMicrometres(width.millimetres, pixels),
          'um',
        ),
        samplingLimit: quantityAnswer('The pixels carry up to', samplingLimit, 'lpPerMm'),
        diffractionLimit: quantityAnswer('The lens shows up to', diffractionLimit, 'lpPerMm'),
        pixelsNeeded: quantityAnswer('Pixels that the film detail asks for', needed, 'px', 4),
        limitedBy: wordsAnswer('The limit is set by', LIMIT_WORDS[limit], {
          level: limit === 'film' ? 'good' : 'care',
        }),
        pixelsPerInch: quantityAnswer(
          'Pixels per inch of film',
          (25.4 * pixels) / width.millimetres,
          'px',
        ),
      },
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { width, scale, effective } = limitsOf(entries);
    const millimetres = formatQuantity(width.millimetres, 'mm', 4);
    return [
      widthStep(width),
      {
        words: 'The picture gets its share of the pixels.',
        sum: `${formatNumber(entries.pixelsAcross)} × ${formatNumber(entries.fillPercent)} % = ${text('picturePixels')}`,
      },
      {
        words: 'Half as many line pairs lie on its width.',
        sum: `${text('picturePixels')} ÷ (2 × ${millimetres}) = ${text('samplingLimit')}`,
      },
      {
        words: 'The lens: magnification and effective f-number first, then Rayleigh’s rule.',
        sum: `${formatNumber(scale)} ÷ (1.22 × 0.00055 mm × ${formatNumber(effective)}) = ${text('diffractionLimit')}`,
      },
      {
        words: 'What the film asks for: two pixels for each line pair.',
        sum: `2 × ${formatQuantity(entries.filmLinePairs, 'lpPerMm')} × ${millimetres}, rounded up = ${text('pixelsNeeded')}`,
      },
    ];
  },
  cautions: [
    'More pixels than the detail asks for draw the grain more finely and nothing else. Judge on your own film, at the size it will be seen.',
    'Two archives that publish what they do take more pixels than this sum asks for, so that grain and picture edge are recorded too: 2048 × 1556 for 8 mm, Super 8 and 16 mm in one, 2560 × 1875 for 8 mm and Super 8 in the other.',
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
