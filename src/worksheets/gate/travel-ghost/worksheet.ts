import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { cycleArcSeconds, travelGhost, type TravelGhost } from '../../../core/gate/travel-ghost.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { Outcome } from '../../machine/types.ts';
import { filmFpsInput, openPercentInput } from '../gate-inputs.ts';

/** Smear shorter than this share of the frame height is lost in the grain; common practice. */
const VISIBLE_SHARE = 0.002;

function verdictOf(ghost: TravelGhost, spareDegrees: number): Outcome['verdict'] {
  const { smearUpShare: up, smearDownShare: down } = ghost;
  if (up === 0 && down === 0) {
    return {
      level: 'good',
      sentence: `The blade covers the whole move of the film, with ${formatNumber(spareDegrees, 3)}° to spare.`,
    };
  }
  const length = (share: number): string =>
    `${formatQuantity(share * 100, 'percent', 2)} of the frame height`;
  const level = Math.max(up, down) < VISIBLE_SHARE ? 'care' : 'stop';
  if (up > 0 && down > 0) {
    return {
      level,
      sentence: `The blade is too narrow or the move too slow: bright parts smear upwards by ${length(up)} and downwards by ${length(down)}.`,
    };
  }
  return up > 0
    ? {
        level,
        sentence: `The blade comes too late: bright parts smear upwards by ${length(up)}.`,
      }
    : {
        level,
        sentence: `The blade comes too early: bright parts smear downwards by ${length(down)}.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'travel-ghost',
  title: 'Travel ghost',
  question: 'Does light fall on the film while it moves, and which way does the picture smear?',
  chapter: 'gate/shutter-blades',
  inputs: {
    filmFps: filmFpsInput,
    pulldownDegrees: {
      kind: 'quantity',
      label: 'Pulldown angle',
      unit: 'deg',
      minimum: 5,
      maximum: 180,
      default: '60',
      accepted: '60 or 90°',
      help: 'Part of the film-frame cycle, of 360°, in which the claw moves the film. About 60° on silent and 90° on sound projectors.',
    },
    bladeDegrees: {
      kind: 'quantity',
      label: 'Pulldown blade angle',
      unit: 'deg',
      minimum: 5,
      maximum: 180,
      default: '66',
      accepted: '66 or 60°',
      help: 'Part of the same cycle in which this blade covers the gate. If the shutter turns three times for a frame, divide the angle on the disc by three.',
    },
    bladeLagDegrees: {
      kind: 'quantity',
      label: 'Blade behind the move',
      unit: 'deg',
      minimum: -90,
      maximum: 90,
      default: '0',
      accepted: '0, 6 or -4',
      help: 'Middle of the blade after the middle of the move, in the same degrees. Negative when the blade comes early.',
    },
    openPercent: openPercentInput,
    motion: {
      kind: 'choice',
      label: 'Motion of the claw',
      options: { soft: 'starts and stops softly', even: 'moves evenly' },
      default: 'soft',
      help: 'Real claws are between the two. An even motion gives the longest smear.',
    },
  },
  model:
    'Move and blade are arcs of one film-frame cycle; light falls on the part of the move that the blade leaves open. Directions are for a picture with its heads up; a raw recording straight into the gate has them down, and there up and down change places. Edges are hard; a wipe makes the ends of the smear fainter. The motion of the claw is assumed, so the length of the smear is a guide, not a measurement.',
  answers: {
    coverage: 'The move is',
    uncoveredBeforeDegrees: 'Open at the start of the move',
    uncoveredAfterDegrees: 'Open at the end of the move',
    smearUpPercent: 'Smear upwards, of the frame height',
    smearDownPercent: 'Smear downwards, of the frame height',
    movingLightPercent: 'Light that falls on moving film',
    pulldownMilliseconds: 'The move takes',
    bladeMilliseconds: 'The blade covers',
    neededBladeDegrees: 'Blade needed at this timing',
  },
  find({ filmFps, pulldownDegrees, bladeDegrees, bladeLagDegrees, openPercent, motion }) {
    const open = openPercent / 100;
    return {
      ghost: travelGhost(pulldownDegrees, bladeDegrees, bladeLagDegrees, open, motion),
      pulldownSeconds: cycleArcSeconds(pulldownDegrees, filmFps),
      bladeSeconds: cycleArcSeconds(bladeDegrees, filmFps),
      neededDegrees: pulldownDegrees + 2 * Math.abs(bladeLagDegrees),
    };
  },
  outcome(
    { ghost, pulldownSeconds, bladeSeconds, neededDegrees },
    { pulldownDegrees, bladeDegrees },
  ) {
    const { uncoveredBeforeDegrees, uncoveredAfterDegrees } = ghost;
    const uncovered = uncoveredBeforeDegrees + uncoveredAfterDegrees;
    const streaks = (way: string): string =>
      `In a raw recording straight into the gate, heads down, these streaks point ${way}.`;
    return {
      verdict: verdictOf(ghost, bladeDegrees - neededDegrees),
      answers: {
        coverage:
          uncovered === 0
            ? words('covered', { level: 'good' })
            : words(`open for ${formatQuantity(uncovered, 'deg', 3)}`, { level: 'care' }),
        uncoveredBeforeDegrees: quantity(uncoveredBeforeDegrees, 'deg'),
        uncoveredAfterDegrees: quantity(uncoveredAfterDegrees, 'deg'),
        smearUpPercent: quantity(ghost.smearUpShare * 100, 'percent', 2, {
          note: streaks('down'),
        }),
        smearDownPercent: quantity(ghost.smearDownShare * 100, 'percent', 2, {
          note: streaks('up'),
        }),
        movingLightPercent: quantity(ghost.movingLightShare * 100, 'percent', 2, {
          note: 'Of all the light of a film frame: how strong the smear is.',
        }),
        pulldownMilliseconds: quantity(pulldownSeconds * 1000, 'ms'),
        bladeMilliseconds: quantity(bladeSeconds * 1000, 'ms'),
        neededBladeDegrees: quantity(neededDegrees, 'deg', 3, {
          note: `With the blade on time, ${formatQuantity(pulldownDegrees, 'deg', 3)} would do.`,
        }),
      },
    };
  },
  working(_found, told, { filmFps, pulldownDegrees, bladeDegrees, bladeLagDegrees }) {
    const move = formatNumber(pulldownDegrees, 4);
    const lag = formatNumber(bladeLagDegrees, 4);
    const narrower = `(${move} − ${formatNumber(bladeDegrees, 4)}) ÷ 2`;
    return [
      {
        words: 'The move takes its part of the time of one film frame.',
        sum: `${move} ÷ 360 ÷ ${formatNumber(filmFps, 5)} = ${told('pulldownMilliseconds')}`,
      },
      {
        words:
          'At the start, half of the angle by which the blade is narrower, plus its lag, stays open; never less than nothing.',
        sum: `${narrower} + (${lag}), at least 0 and at most ${move}: ${told('uncoveredBeforeDegrees')}`,
      },
      {
        words: 'At the end, half of the angle by which it is narrower, less its lag.',
        sum: `${narrower} − (${lag}), at least 0 and at most ${move}: ${told('uncoveredAfterDegrees')}`,
      },
      {
        words: 'The film travels this far in the open part; that is the length of the smear.',
        sum: `up ${told('smearUpPercent')}, down ${told('smearDownPercent')}`,
      },
    ];
  },
  cautions: [
    'Pull the mains plug before you touch claw or shutter, and turn the machine by hand: both can trap a finger.',
    'Retiming a shutter is work for someone who knows the machine. Mark the old position first.',
  ],
  sources: ['wheeler-1953', 'sprocket-school-ghosting', 'gage-optic-projection-1914', 'arithmetic'],
});
