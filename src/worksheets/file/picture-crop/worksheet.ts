import { FILE_NAMES } from '../../../core/file/file-names.ts';
import type { GaugeId } from '../../../core/reel/gauges/gauge.ts';
import {
  cropRectangle,
  shownWidthPixels,
  sideBarPixels,
  type CropRectangle,
  type PictureEdges,
} from '../../../core/gate/picture-crop.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { lookCommand } from '../../../core/file/recording-commands.ts';
import { cropFilter, viewingCommand } from '../../../core/file/viewing-commands.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { gatePictureWidth } from '../../gate/gate-picture-width.ts';
import { pictureGaugeInput, pictureWidthInput } from '../../gate/lens-inputs.ts';
import {
  defineWorksheet,
  type OptionalQuantityInput,
  type Outcome,
  type QuantityInput,
} from '../../machine/types.ts';

/** Difference of the two scales beyond which the camera is not square to the gate, %; practice. */
const SQUARE_PERCENT = 2;

const SCREEN = { widthPixels: 1920, heightPixels: 1080 };

interface Entries extends PictureEdges {
  readonly gauge: GaugeId;
  readonly pictureWidthMillimetres: number | undefined;
  readonly pictureHeightMillimetres: number | undefined;
  readonly trimPercent: number;
}

function scalesOf(entries: Entries) {
  const { gauge, pictureWidthMillimetres, pictureHeightMillimetres } = entries;
  const width = gatePictureWidth(gauge, pictureWidthMillimetres);
  const heightMillimetres = pictureHeightMillimetres ?? width.millimetres / width.widthToHeight;
  const across = (entries.rightPixels - entries.leftPixels) / width.millimetres;
  const down = (entries.bottomPixels - entries.topPixels) / heightMillimetres;
  return {
    width,
    heightMillimetres,
    across,
    down,
    differencePercent: 100 * (across / down - 1),
  };
}

function verdictFor(crop: CropRectangle, differencePercent: number): Outcome['verdict'] {
  const size = `${crop.widthPixels} × ${crop.heightPixels} pixels`;
  return Math.abs(differencePercent) <= SQUARE_PERCENT
    ? {
        level: 'good',
        sentence: `Keep ${size}, from ${crop.leftPixels} pixels right of the left edge and ${crop.topPixels} below the top.`,
      }
    : {
        level: 'care',
        sentence: `The picture is ${formatNumber(Math.abs(differencePercent), 2)} % too ${differencePercent > 0 ? 'wide' : 'high'} for its gauge: check the edges, whether the camera looks squarely at the gate, and the gauge, before you crop to ${size}.`,
      };
}

const edge = (label: string, value: string, help: string): QuantityInput => ({
  kind: 'quantity',
  label,
  unit: 'px',
  minimum: 0,
  maximum: 20_000,
  default: value,
  accepted: `${value} or ${Number(value) + 1}`,
  help,
});

export const worksheet = defineWorksheet({
  id: 'picture-crop',
  title: 'Crop and shape',
  question: 'Which part of the frame is the picture, and has it the right shape?',
  chapter: 'gate/lens',
  inputs: {
    gauge: pictureGaugeInput,
    pictureWidthMillimetres: pictureWidthInput,
    pictureHeightMillimetres: {
      kind: 'optional-quantity',
      label: 'Height of the film picture',
      unit: 'mm',
      minimum: 1,
      maximum: 60,
      default: '',
      accepted: '4.01 or 0.158 in',
      help: 'Empty: in the shape that a projector of this gauge shows.',
    } as const satisfies OptionalQuantityInput,
    leftPixels: edge(
      'Left edge of the picture',
      '288',
      'Pixels from the left edge of the frame, read in the film file, after it was turned.',
    ),
    rightPixels: edge(
      'Right edge of the picture',
      '1632',
      'Also counted from the left: the first pixel that is no longer picture.',
    ),
    topPixels: edge('Upper edge of the picture', '33', 'Pixels from the upper edge of the frame.'),
    bottomPixels: edge(
      'Lower edge of the picture',
      '1048',
      'Also counted from the top: the first pixel that is no longer picture.',
    ),
    trimPercent: {
      kind: 'quantity',
      label: 'Trim at each edge',
      unit: 'percent',
      minimum: 0,
      maximum: 20,
      default: '0',
      accepted: '0, 1 or 2.5 %',
      help: '0 keeps everything inside the gate. 2 to 4 % takes most rounded corners and hairs away, and a little picture with them: ask the customer.',
    },
  },
  model:
    'Edges go inwards to the next even pixel, because the copy to watch holds colour for two pixels at a time. Pixels are square, so a millimetre of film must be as many pixels down as across; where it is not, the camera stands at an angle, or the sizes typed are not those of the gate. Gates of one gauge differ a little. The master keeps all that the camera saw; only the copy to watch is cropped.',
  compute(entries) {
    const crop = cropRectangle(entries, entries.trimPercent / 100);
    const { across, down, differencePercent } = scalesOf(entries);
    const shape = crop.widthPixels / crop.heightPixels;
    const isDrawable = shape >= 0.2 && shape <= 5;
    const shownWidth = isDrawable ? shownWidthPixels(shape, SCREEN.heightPixels) : undefined;
    const bars =
      shownWidth === undefined ? undefined : sideBarPixels(SCREEN.widthPixels, shownWidth);
    return {
      verdict: verdictFor(crop, differencePercent),
      answers: {
        widthPixels: quantityAnswer('Width to keep', crop.widthPixels, 'px', 5),
        heightPixels: quantityAnswer('Height to keep', crop.heightPixels, 'px', 5),
        leftPixels: quantityAnswer('From the left', crop.leftPixels, 'px', 5),
        topPixels: quantityAnswer('From the top', crop.topPixels, 'px', 5),
        shape: quantityAnswer('Shape, width to height', shape, 'one', 4),
        acrossPerMillimetre: quantityAnswer('Pixels for each millimetre, across', across, 'px', 4),
        downPerMillimetre: quantityAnswer('Pixels for each millimetre, down', down, 'px', 4),
        differencePercent: quantityAnswer(
          `Too ${differencePercent < 0 ? 'high' : 'wide'} for the gauge by`,
          Math.abs(differencePercent),
          'percent',
          2,
          { level: Math.abs(differencePercent) <= SQUARE_PERCENT ? 'good' : 'care' },
        ),
        ...(shownWidth === undefined || bars === undefined
          ? {}
          : {
              shownWidthPixels: quantityAnswer(
                'Width on a screen of 1920 × 1080',
                shownWidth,
                'px',
                5,
              ),
              ...(bars >= 0
                ? { barPixels: quantityAnswer('Black bar at each side', bars, 'px', 4) }
                : {
                    barPixels: wordsAnswer('Black bars', 'above and below', {
                      note: 'The picture is wider than the screen.',
                    }),
                  }),
            }),
      },
      commands: [
        {
          label: 'Look at one picture of the crop',
          text: lookCommand(FILE_NAMES.film, [cropFilter(crop)], 10),
        },
        { label: 'Make the copy to watch, cropped', text: viewingCommand(crop, false) },
        { label: 'The same with sound', text: viewingCommand(crop, true) },
      ],
    };
  },
  working(entries, { answers }) {
    const text = (key: string): string => answers[key]?.text ?? '';
    const { width, heightMillimetres } = scalesOf(entries);
    const { leftPixels, rightPixels, topPixels, bottomPixels } = entries;
    return [
      {
        words: `Size of the film picture: ${width.note}.`,
        sum: `${formatQuantity(width.millimetres, 'mm', 4)} × ${formatQuantity(heightMillimetres, 'mm', 4)}`,
      },
      {
        words: 'Pixels for each millimetre, across and down; they must agree.',
        sum: `(${formatNumber(rightPixels, 5)} − ${formatNumber(leftPixels, 5)}) ÷ ${formatNumber(width.millimetres, 4)} = ${text('acrossPerMillimetre')}; (${formatNumber(bottomPixels, 5)} − ${formatNumber(topPixels, 5)}) ÷ ${formatNumber(heightMillimetres, 4)} = ${text('downPerMillimetre')}`,
      },
      {
        words: 'Edges go inwards to the next even pixel, after the trim.',
        sum: `${text('widthPixels')} × ${text('heightPixels')}, from ${text('leftPixels')} and ${text('topPixels')}`,
      },
    ];
  },
  cautions: [
    'Crop the copy to watch, never the master: what is cut from the master is gone.',
    'Look at the first, a middle and the last scene before you crop: the picture may stand lower in one of them.',
  ],
  sources: [
    'arithmetic',
    'smpte-154-157',
    'nypl-ami-film-2020',
    'common-practice',
    'ffmpeg-documentation',
  ],
});
