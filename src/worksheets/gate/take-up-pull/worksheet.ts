import { pullLimits, pullNewtons } from '../../../core/gate/take-up-pull.ts';
import { GAUGES } from '../../../core/reel/gauges.ts';
import { OutOfRangeError } from '../../../quantity/errors.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { InputSpecs, Outcome, ValuesOf } from '../../machine/types.ts';

const pull = (label: string, help: string) =>
  ({
    kind: 'optional-quantity',
    label,
    unit: 'newton',
    minimum: 0.01,
    maximum: 50,
    default: '',
    accepted: '1.2 or 1.2 N',
    help,
  }) as const;

const inputs = {
  gauge: {
    kind: 'choice',
    label: 'Gauge',
    options: {
      '8mm-type-r': 'Standard 8',
      'super-8': 'Super 8',
      '9.5mm': '9.5 mm',
      '16mm': '16 mm',
    },
    default: 'super-8',
    help: 'The limits are printed for 16 mm; for narrower film they are reduced in proportion to its width.',
  },
  hubDiameterMillimetres: {
    kind: 'quantity',
    label: 'Hub of the take-up reel, across',
    unit: 'mm',
    minimum: 10,
    maximum: 300,
    default: '32',
    accepted: '32 or 1.25 in',
    help: 'Where the first turn of film lies.',
  },
  fullDiameterMillimetres: {
    kind: 'quantity',
    label: 'Film on it when full, across',
    unit: 'mm',
    minimum: 10,
    maximum: 600,
    default: '113',
    accepted: '113 or 5 in',
    help: 'Across the film, not the flange.',
  },
  emptyPullNewtons: pull(
    'Pull near empty, measured',
    'A spring balance on the end of the film; read it just as the clutch slips. 100 grams are about 1 N. Empty: not measured.',
  ),
  fullPullNewtons: pull('Pull near full, measured', 'The same with a full reel.'),
  brakeNewtons: pull(
    'Pull that turns the feed reel, measured',
    'Film drawn slowly and evenly off the full reel.',
  ),
} as const satisfies InputSpecs;

type Values = ValuesOf<typeof inputs>;
type Found = ReturnType<typeof findPull>;

function findPull(values: Values) {
  const { hubDiameterMillimetres, fullDiameterMillimetres } = values;
  if (fullDiameterMillimetres < hubDiameterMillimetres) {
    throw new OutOfRangeError(
      'fullDiameterMillimetres',
      fullDiameterMillimetres,
      `no less than the hub, ${hubDiameterMillimetres} mm`,
    );
  }
  const limits = pullLimits(GAUGES[values.gauge].filmWidth.millimetres);
  const torque = (limits.leastNewtons * fullDiameterMillimetres) / 2;
  return {
    limits,
    ratio: fullDiameterMillimetres / hubDiameterMillimetres,
    torque,
    hubPull: pullNewtons(torque, hubDiameterMillimetres),
    smallestHub: (fullDiameterMillimetres * limits.leastNewtons) / limits.mostNewtons,
  };
}

const newtons = (value: number): string => formatQuantity(value, 'newton', 2);

function faultOf({ limits }: Found, values: Values): string | undefined {
  const { leastNewtons: least, mostNewtons: most, mostBrakeNewtons: mostBrake } = limits;
  const { emptyPullNewtons: empty, fullPullNewtons: full, brakeNewtons: brake } = values;
  if (empty !== undefined && empty > most) {
    return `It pulls ${newtons(empty)} on the empty reel, more than ${newtons(most)}: ease the clutch or take a larger hub.`;
  }
  if (full !== undefined && full > most) {
    return `It pulls ${newtons(full)} on the full reel, more than ${newtons(most)}: ease the clutch.`;
  }
  if (full !== undefined && full < least) {
    return `It pulls only ${newtons(full)} on the full reel, less than ${newtons(least)}: film will spill. Clutch or belt slips.`;
  }
  if (empty !== undefined && empty < least) {
    return `It pulls only ${newtons(empty)} on the empty reel, less than ${newtons(least)}: the winding stays loose.`;
  }
  return brake !== undefined && brake > mostBrake
    ? `The feed reel holds back with ${newtons(brake)}, more than ${newtons(mostBrake)}: ease its brake.`
    : undefined;
}

function verdictFor(found: Found, values: Values): Outcome['verdict'] {
  const fault = faultOf(found, values);
  if (fault !== undefined) return { level: 'stop', sentence: fault };
  const { emptyPullNewtons, fullPullNewtons, brakeNewtons } = values;
  if (
    emptyPullNewtons === undefined ||
    fullPullNewtons === undefined ||
    brakeNewtons === undefined
  ) {
    return {
      level: 'care',
      sentence:
        found.hubPull > found.limits.mostNewtons
          ? `Not measured yet, and no steady clutch can serve these two diameters: take a hub of at least ${formatQuantity(Math.ceil(found.smallestHub), 'mm', 3)}.`
          : 'Not measured yet: read the pull near empty and near full, and the brake of the feed reel, before a customer’s film goes on.',
    };
  }
  return { level: 'good', sentence: 'The pull is within the limits at both ends of the reel.' };
}

export const worksheet = defineWorksheet({
  id: 'take-up-pull',
  title: 'Pull of the take-up',
  question: 'Does the take-up reel pull hard enough when full and softly enough when empty?',
  chapter: 'gate/set-up',
  inputs,
  model:
    'A clutch that slips at a steady torque pulls hardest on the empty hub: pull = torque ÷ radius. The limits, 3 to 10 ounces of pull and at most 3 of braking, were printed for 16 mm machines in television, for hubs of at least 114 mm. For home reels they are a target only. For narrower film they are reduced in proportion to its width, which nobody has proved.',
  answers: {
    leastNewtons: 'Pull, at least',
    mostNewtons: 'Pull, at most',
    mostBrakeNewtons: 'Brake of the feed reel, at most',
    ratio: 'Full diameter ÷ empty diameter',
    torqueNewtonMillimetres: 'Torque that still serves the full reel',
    hubNewtons: 'Pull of that torque on the empty hub',
    smallestHubMillimetres: 'Smallest hub for this much film',
  },
  find: findPull,
  outcome(found, values) {
    const { limits, hubPull } = found;
    return {
      verdict: verdictFor(found, values),
      answers: {
        leastNewtons: quantity(limits.leastNewtons, 'newton'),
        mostNewtons: quantity(limits.mostNewtons, 'newton'),
        mostBrakeNewtons: quantity(limits.mostBrakeNewtons, 'newton'),
        ratio: quantity(found.ratio, 'one'),
        torqueNewtonMillimetres: quantity(found.torque, 'newtonMillimetre'),
        hubNewtons: quantity(hubPull, 'newton', 3, {
          level: hubPull > limits.mostNewtons ? 'stop' : 'good',
        }),
        smallestHubMillimetres: quantity(found.smallestHub, 'mm'),
      },
    };
  },
  working({ limits }, told, values) {
    return [
      {
        words: 'Least pull times the radius of the full reel is the least torque.',
        sum: `${newtons(limits.leastNewtons)} × ${formatNumber(values.fullDiameterMillimetres / 2)} mm = ${told('torqueNewtonMillimetres')}`,
      },
      {
        words:
          'The same torque on the radius of the hub is its pull there, to compare with the most.',
        sum: `${told('torqueNewtonMillimetres')} ÷ ${formatNumber(values.hubDiameterMillimetres / 2)} mm = ${told('hubNewtons')}`,
      },
    ];
  },
  cautions: [
    'Measure with leader or scrap film, lamp off, and keep fingers and sleeves out of belts and reels.',
  ],
  sources: ['ph22-91-1952', 'arithmetic', 'common-practice'],
});
