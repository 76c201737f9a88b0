import {
  likelyThicknessMillimetres,
  measuredThickness,
  outerDiameterMillimetres,
  WOUND_THICKNESS,
  type FilmKind,
} from '../../../core/reel/reel-length.ts';
import { windingTurns } from '../../../core/reel/rewind-turns.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';

/** Rim that stays free, so that the last turns cannot slip off, mm; practice. */
const FREE_RIM_MILLIMETRES = 5;
/** Rim below which a loose turn slips off, mm; practice. */
const LEAST_RIM_MILLIMETRES = 2;

const KINDS = Object.fromEntries(
  Object.entries(WOUND_THICKNESS).map(([id, { name }]) => [id, name]),
) as Readonly<Record<FilmKind, string>>;

const inputs = {
  lengthMetres: {
    kind: 'quantity',
    label: 'Length',
    unit: 'm',
    minimum: 0.5,
    maximum: 2000,
    default: '60',
    accepted: '60 m or 200 ft',
    help: 'Film and both leaders. If the length was estimated, enter the upper bound.',
  },
  coreDiameterMillimetres: {
    kind: 'quantity',
    label: 'Hub of the take-up reel, across',
    unit: 'mm',
    minimum: 10,
    maximum: 250,
    default: '32',
    accepted: '32, 3.2 cm or 1 1/4 in',
    help: 'Where the first turn of film will lie.',
  },
  flangeDiameterMillimetres: {
    kind: 'quantity',
    label: 'Flange of the take-up reel, across',
    unit: 'mm',
    minimum: 20,
    maximum: 800,
    default: '127',
    accepted: '127, 12.7 cm or 5 in',
    help: 'The whole reel, from rim to rim.',
  },
  filmKind: {
    kind: 'choice',
    label: 'Film',
    options: KINDS,
    default: 'unknown',
    help: 'Film that nobody looked at counts as the thickest.',
  },
  measuredMillimetres: {
    kind: 'optional-quantity',
    label: 'Thickness, if measured',
    unit: 'mm',
    minimum: 0.02,
    maximum: 0.5,
    default: '',
    accepted: '0.15 or 0.006 in',
    help: 'Callipers over ten turns, closed until they just touch, divided by ten; not on brittle film.',
  },
  turnsRatio: {
    kind: 'quantity',
    label: 'Turns of the reel for one of the handle',
    unit: 'one',
    minimum: 0.5,
    maximum: 10,
    default: '3',
    accepted: '3 or 2.5',
    help: 'Turn the handle once and count. Upright rewinds have about three or four, flat ones two.',
  },
} as const satisfies InputSpecs;

function roomVerdict(room: number, flange: number, smallest: number): Outcome['verdict'] {
  const larger = `a reel of at least ${formatQuantity(smallest, 'mm', 4)} across`;
  if (room >= FREE_RIM_MILLIMETRES - 1e-9) {
    return {
      level: 'good',
      sentence: `It fits with ${formatQuantity(room, 'mm', 2)} of rim to spare, even wound loosely.`,
    };
  }
  return room >= LEAST_RIM_MILLIMETRES
    ? {
        level: 'care',
        sentence: `It fits with only ${formatQuantity(room, 'mm', 2)} of rim: stay beside it to the end, or take ${larger}.`,
      }
    : {
        level: 'stop',
        sentence: `It may not fit on ${formatQuantity(flange, 'mm')}: take ${larger}.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'take-up-room',
  title: 'Room on the take-up reel',
  question: 'Does the whole film fit on this reel, and how many turns does the rewind take?',
  chapter: 'gate/run-the-reel',
  inputs,
  model:
    'The film covers a ring between hub and rim: diameter = √(hub² + 4 × thickness × length ÷ π), turns = (diameter − hub) ÷ (2 × thickness). The verdict takes the thickest film that the entry allows, wound loosely, and wants 5 mm of rim left free; below 2 mm it says no. Both margins are common practice.',
  answers: {
    mostMillimetres: 'Film across, at most',
    likelyMillimetres: 'Film across, likely',
    roomMillimetres: 'Rim left free, at least',
    flangeMillimetres: 'Smallest reel that is sure to hold it',
    turns: 'Turns of the reel, likely',
    handleTurns: 'Turns of the handle',
  },
  find({ lengthMetres, coreDiameterMillimetres, filmKind, measuredMillimetres, ...values }) {
    const thickness =
      measuredMillimetres === undefined
        ? WOUND_THICKNESS[filmKind]
        : measuredThickness(measuredMillimetres);
    const likely = likelyThicknessMillimetres(thickness);
    const across = (turn: number): number =>
      outerDiameterMillimetres(lengthMetres * 1000, coreDiameterMillimetres, turn);
    const turns = windingTurns(lengthMetres * 1000, coreDiameterMillimetres, likely);
    const most = across(thickness.maximumMillimetres);
    return {
      thickness,
      likely,
      most,
      likelyAcross: across(likely),
      room: (values.flangeDiameterMillimetres - most) / 2,
      turns,
      handleTurns: turns / values.turnsRatio,
    };
  },
  outcome({ most, likelyAcross, room, turns, handleTurns }, { flangeDiameterMillimetres }) {
    const smallest = Math.ceil(most + 2 * FREE_RIM_MILLIMETRES - 1e-9);
    const verdict = roomVerdict(room, flangeDiameterMillimetres, smallest);
    return {
      verdict,
      answers: {
        mostMillimetres: quantity(most, 'mm'),
        likelyMillimetres: quantity(likelyAcross, 'mm'),
        roomMillimetres: quantity(room, 'mm', 2, { level: verdict.level }),
        flangeMillimetres: quantity(smallest, 'mm', 4),
        turns: quantity(turns, 'one'),
        handleTurns: quantity(handleTurns, 'one'),
      },
    };
  },
  working({ thickness, likely }, told, values) {
    const hub = formatNumber(values.coreDiameterMillimetres);
    const length = formatNumber(values.lengthMetres * 1000, 6);
    return [
      {
        words: 'The thickest turn that it may have.',
        sum: `√(${hub}² + 4 × ${formatNumber(thickness.maximumMillimetres, 4)} × ${length} ÷ π) = ${told('mostMillimetres')}`,
      },
      {
        words: 'What is left of the rim, at each side.',
        sum: `(${formatQuantity(values.flangeDiameterMillimetres, 'mm')} − ${told('mostMillimetres')}) ÷ 2 = ${told('roomMillimetres')}`,
      },
      {
        words: 'Turns, with the likely thickness.',
        sum: `(${told('likelyMillimetres')} − ${hub} mm) ÷ (2 × ${formatQuantity(likely, 'mm', 4)}) = ${told('turns')}`,
      },
    ];
  },
  cautions: ['Keep sleeves and hair out of turning reels, and stop them with the brake.'],
  sources: [
    'arithmetic',
    'international-projectionist-1958',
    'theatre-catalog-1953',
    'common-practice',
  ],
});
