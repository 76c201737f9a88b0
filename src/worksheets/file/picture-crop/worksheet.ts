import { FILE_NAMES } from '../../../core/file/file-names.ts';
import { cropRectangle, shownWidthPixels, sideBarPixels } from '../../../core/gate/picture-crop.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { lookCommand } from '../../../core/file/recording-commands.ts';
import { cropFilter, viewingCommand } from '../../../core/file/viewing-commands.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet, type AnswerBody } from '../../machine/define-worksheet.ts';
import type { Outcome, ValuesOf } from '../../machine/types.ts';
import { gatePictureWidth } from '../../gate/gate-picture-width.ts';
import { inputs } from './inputs.ts';

type Found = ReturnType<typeof findCrop>;

/** Difference of the two scales beyond which the camera is not square to the gate, %; practice. */
const SQUARE_PERCENT = 2;

const SCREEN = { widthPixels: 1920, heightPixels: 1080 };

/** The picture as the screen shows it; nothing for a strip that no screen is made for. */
function onScreen(shape: number) {
  if (shape < 0.2 || shape > 5) return undefined;
  const widthPixels = shownWidthPixels(shape, SCREEN.heightPixels);
  return { widthPixels, barPixels: sideBarPixels(SCREEN.widthPixels, widthPixels) };
}

function findCrop(values: ValuesOf<typeof inputs>) {
  const crop = cropRectangle(values, values.trimPercent / 100);
  const width = gatePictureWidth(values.gauge, values.pictureWidthMillimetres);
  const heightMillimetres =
    values.pictureHeightMillimetres ?? width.millimetres / width.widthToHeight;
  const acrossPerMillimetre = (values.rightPixels - values.leftPixels) / width.millimetres;
  const downPerMillimetre = (values.bottomPixels - values.topPixels) / heightMillimetres;
  const differencePercent = 100 * (acrossPerMillimetre / downPerMillimetre - 1);
  const shape = crop.widthPixels / crop.heightPixels;
  return {
    crop,
    shape,
    screen: onScreen(shape),
    width,
    heightMillimetres,
    acrossPerMillimetre,
    downPerMillimetre,
    /** How much wider than it should be; negative when it is too tall. */
    differencePercent,
    isSquare: Math.abs(differencePercent) <= SQUARE_PERCENT,
  };
}

function verdictFor({ crop, differencePercent, isSquare }: Found): Outcome['verdict'] {
  const size = `${crop.widthPixels} × ${crop.heightPixels} pixels`;
  return isSquare
    ? {
        level: 'good',
        sentence: `Keep ${size}, from ${crop.leftPixels} pixels right of the left edge and ${crop.topPixels} below the top.`,
      }
    : {
        level: 'care',
        sentence: `The picture is ${formatNumber(Math.abs(differencePercent), 2)} % too ${differencePercent > 0 ? 'wide' : 'tall'} for its gauge: check the edges, whether the camera looks squarely at the gate, and the gauge, before you crop to ${size}.`,
      };
}

function barsAnswer(barPixels: number): AnswerBody {
  return barPixels >= 0
    ? quantity(barPixels, 'px', 4, { note: 'At each side.' })
    : words('above and below', { note: 'The picture is wider than the screen.' });
}

export const worksheet = defineWorksheet({
  id: 'picture-crop',
  title: 'Crop and shape',
  question: 'Which part of the frame is the picture, and is its shape right?',
  chapter: 'gate/lens',
  inputs,
  model:
    'Edges are moved inwards to the next even pixel, because the copy to watch holds colour for two pixels at a time. Pixels are square, so a millimetre of film must take as many pixels down as across; if it does not, the camera stands at an angle, or the sizes entered are not those of the gate. Gates of one gauge differ a little. The master keeps all that the camera saw; only the copy to watch is cropped.',
  answers: {
    widthPixels: 'Width to keep',
    heightPixels: 'Height to keep',
    leftPixels: 'From the left',
    topPixels: 'From the top',
    shape: 'Shape, width to height',
    acrossPerMillimetre: 'Pixels for each millimetre, across',
    downPerMillimetre: 'Pixels for each millimetre, down',
    differencePercent: 'Differs from the shape of the gauge by',
    shownWidthPixels: 'Width on a screen of 1920 × 1080',
    barPixels: 'Black bars',
  },
  find: findCrop,
  outcome(found) {
    const { crop, screen, differencePercent } = found;
    return {
      verdict: verdictFor(found),
      answers: {
        widthPixels: quantity(crop.widthPixels, 'px', 5),
        heightPixels: quantity(crop.heightPixels, 'px', 5),
        leftPixels: quantity(crop.leftPixels, 'px', 5),
        topPixels: quantity(crop.topPixels, 'px', 5),
        shape: quantity(found.shape, 'one', 4),
        acrossPerMillimetre: quantity(found.acrossPerMillimetre, 'px', 4),
        downPerMillimetre: quantity(found.downPerMillimetre, 'px', 4),
        differencePercent: quantity(Math.abs(differencePercent), 'percent', 2, {
          level: found.isSquare ? 'good' : 'care',
          ...(differencePercent === 0
            ? {}
            : { note: differencePercent > 0 ? 'Wider than its gauge.' : 'Taller than its gauge.' }),
        }),
        ...(screen === undefined
          ? {}
          : {
              shownWidthPixels: quantity(screen.widthPixels, 'px', 5),
              barPixels: barsAnswer(screen.barPixels),
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
  working({ width, heightMillimetres }, told, values) {
    const { leftPixels, rightPixels, topPixels, bottomPixels } = values;
    return [
      {
        words: `Size of the film picture: ${width.note}.`,
        sum: `${formatQuantity(width.millimetres, 'mm', 4)} × ${formatQuantity(heightMillimetres, 'mm', 4)}`,
      },
      {
        words: 'Pixels for each millimetre, across and down; they must agree.',
        sum: `(${formatNumber(rightPixels, 5)} − ${formatNumber(leftPixels, 5)}) ÷ ${formatNumber(width.millimetres, 4)} = ${told('acrossPerMillimetre')}; (${formatNumber(bottomPixels, 5)} − ${formatNumber(topPixels, 5)}) ÷ ${formatNumber(heightMillimetres, 4)} = ${told('downPerMillimetre')}`,
      },
      {
        words: 'Edges go inwards to the next even pixel, after the trim.',
        sum: `${told('widthPixels')} × ${told('heightPixels')}, from ${told('leftPixels')} and ${told('topPixels')}`,
      },
    ];
  },
  cautions: [
    'Crop the copy to watch, never the master: what is cut from the master is gone.',
    'Look at the first, a middle and the last scene before you crop: the picture may sit lower in one of them.',
  ],
  sources: [
    'arithmetic',
    'smpte-154-157',
    'nypl-ami-film-2020',
    'common-practice',
    'ffmpeg-documentation',
  ],
});
