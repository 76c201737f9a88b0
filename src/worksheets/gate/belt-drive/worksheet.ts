import { openBeltMillimetres, pulleyForRateMillimetres } from '../../../core/gate/belt-drive.ts';
import { OutOfRangeError } from '../../../quantity/errors.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs } from '../../machine/types.ts';

/** No pulley of a projector is larger, mm. */
const LARGEST_MILLIMETRES = 500;

const rate = (label: string, preset: string, help: string) =>
  ({
    kind: 'quantity',
    label,
    unit: 'fps',
    minimum: 1,
    maximum: 60,
    default: preset,
    accepted: '18, 16 2/3 or 16,67',
    help,
  }) as const;

const diameter = (label: string, preset: string, help: string) =>
  ({
    kind: 'quantity',
    label,
    unit: 'mm',
    minimum: 2,
    maximum: LARGEST_MILLIMETRES,
    default: preset,
    accepted: `${preset} or 2 in`,
    help,
  }) as const;

const inputs = {
  fromFps: rate(
    'Film rate now',
    '18',
    'Measured, with film in the gate: a slipping belt is then counted.',
  ),
  toFps: rate('Film rate wanted', '16 2/3', 'What the match asks for.'),
  pulleyMillimetres: diameter(
    'Motor pulley now, bottom of the groove',
    '17',
    'With callipers, the mains plug pulled.',
  ),
  drivenMillimetres: diameter(
    'Pulley on the machine, bottom of the groove',
    '57',
    'The one that the belt drives.',
  ),
  beltMillimetres: {
    kind: 'quantity',
    label: 'Thickness of the belt',
    unit: 'mm',
    minimum: 0.5,
    maximum: 20,
    default: '3',
    accepted: '3 or 0.12 in',
    help: 'Across a round belt. The belt bends about its middle, so half of it counts on each side.',
  },
  centreMillimetres: diameter('Distance between the two shafts', '120', 'From middle to middle.'),
} as const satisfies InputSpecs;

export const worksheet = defineWorksheet({
  id: 'belt-drive',
  title: 'Pulley and belt',
  question: 'Which pulley gives the film rate that I want, and how long is its belt?',
  chapter: 'gate/set-up',
  inputs,
  model:
    'The film rate is proportional to the diameter of the motor’s pulley, measured to the middle of the belt: the bottom of the groove plus one thickness of belt. A belt slips a little, and more under load, so measure the new rate with film in the gate and correct the diameter once. A round belt of rubber is cut 3 to 6 % short so that it pulls; that is practice of the trade.',
  answers: {
    ratio: 'New rate ÷ old rate',
    newGrooveMillimetres: 'New motor pulley, bottom of the groove',
    newPitchMillimetres: 'The same in the middle of the belt',
    beltMillimetres: 'Length of the belt, along its middle',
    cutMillimetres: 'Rubber belt, cut to',
  },
  find({ fromFps, toFps, pulleyMillimetres, drivenMillimetres, beltMillimetres, ...values }) {
    const pitch = pulleyMillimetres + beltMillimetres;
    const newPitch = pulleyForRateMillimetres(pitch, fromFps, toFps);
    if (newPitch > LARGEST_MILLIMETRES) {
      throw new OutOfRangeError(
        'toFps',
        toFps,
        `a rate for which no pulley of more than ${LARGEST_MILLIMETRES} mm is needed`,
      );
    }
    const driven = drivenMillimetres + beltMillimetres;
    return {
      pitch,
      newPitch,
      driven,
      groove: newPitch - beltMillimetres,
      belt: openBeltMillimetres(driven, newPitch, values.centreMillimetres),
    };
  },
  outcome({ newPitch, groove, belt }, { fromFps, toFps, beltMillimetres }) {
    const isThick = groove < beltMillimetres;
    return {
      verdict: isThick
        ? {
            level: 'stop',
            sentence:
              'The pulley would be thinner than its belt, which then slips and breaks: change the pulley on the machine instead, or have the motor controlled.',
          }
        : {
            level: 'note',
            sentence: `A motor pulley of ${formatQuantity(groove, 'mm', 4)} at the bottom of its groove. Measure the rate with film, then correct it once.`,
          },
      answers: {
        ratio: quantity(toFps / fromFps, 'one', 4),
        newGrooveMillimetres: quantity(groove, 'mm', 4, { level: isThick ? 'stop' : 'good' }),
        newPitchMillimetres: quantity(newPitch, 'mm', 4),
        beltMillimetres: quantity(belt, 'mm', 4),
        cutMillimetres: words(
          `${formatNumber(0.94 * belt, 3)} to ${formatQuantity(0.97 * belt, 'mm', 3)}`,
          { note: '3 to 6 % short: common practice.' },
        ),
      },
    };
  },
  working({ pitch, newPitch, driven }, told, values) {
    const rates = `${formatNumber(values.toFps, 4)} ÷ ${formatNumber(values.fromFps, 4)}`;
    const [large, small] = [formatNumber(driven, 4), formatNumber(newPitch, 4)];
    const centre = formatNumber(values.centreMillimetres, 4);
    return [
      {
        words: 'Both pulleys, in the middle of the belt.',
        sum: `${formatNumber(values.pulleyMillimetres)} + ${formatNumber(values.beltMillimetres)} = ${formatQuantity(pitch, 'mm')}; ${formatNumber(values.drivenMillimetres)} + ${formatNumber(values.beltMillimetres)} = ${formatQuantity(driven, 'mm')}`,
      },
      {
        words: 'The motor’s pulley grows as the rate does.',
        sum: `${formatQuantity(pitch, 'mm')} × ${rates} = ${told('newPitchMillimetres')}`,
      },
      {
        words: 'Less the belt that lies in it.',
        sum: `${told('newPitchMillimetres')} − ${formatQuantity(values.beltMillimetres, 'mm')} = ${told('newGrooveMillimetres')}`,
      },
      {
        words: 'Belt: twice the distance, half of both circles, and a little for the slope.',
        sum: `2 × ${centre} + π × (${large} + ${small}) ÷ 2 + (${large} − ${small})² ÷ (4 × ${centre}) = ${told('beltMillimetres')}`,
      },
    ];
  },
  cautions: [
    'Pull the plug before you touch a belt or a pulley, and put every guard back: a belt takes fingers, hair and sleeves.',
    'Change only what the machine’s handbook shows. A motor, its switch and its resistor are on the mains side: a licensed electrician, local rules first.',
  ],
  sources: ['arithmetic', 'common-practice'],
});
