import { isMirrored, turnFilters, type PictureTurn } from '../../../core/gate/picture-turn.ts';
import type { HoleRows, ThreadedFilm } from '../../../core/gate/picture-way.ts';
import type { Outcome } from '../../machine/types.ts';
import { TURN_WORDS } from '../recording-inputs.ts';
import type { Found, Values } from './findings.ts';

export function causeWords({ isTailFirst, isBackToFront }: ThreadedFilm): string {
  if (!isTailFirst)
    return isBackToFront ? 'the film is in back to front' : 'the film is threaded right';
  return isBackToFront ? 'tail first and back to front' : 'tail first, with the right face';
}

export function handWords({ isTailFirst, isBackToFront }: ThreadedFilm, rows: HoleRows): string {
  if (!isTailFirst) {
    return isBackToFront
      ? 'Take the film out and thread it again, the same end first and the other face to the lens.'
      : 'Leave the film as it is.';
  }
  if (rows === 'single') {
    return 'Take the film out and rewind it, so that the head comes first. The claw takes the holes on one side only, so the right face then turns to the lens by itself.';
  }
  return isBackToFront
    ? 'Take the film out, rewind it, and thread it with the other face to the lens.'
    : 'Take the film out and rewind it. Keep the same face to the lens.';
}

export function fileWords(turn: PictureTurn): string {
  const filters = turnFilters(turn);
  if (filters.length === 0) return 'nothing to turn';
  if (filters.length === 2) return 'a half turn: hflip,vflip';
  return filters[0] === 'vflip' ? 'top to bottom: vflip' : 'left to right: hflip';
}

export function turnWords(turn: PictureTurn): string {
  if (isMirrored(turn)) return TURN_WORDS[turn.isUpsideDown ? 'upside-down-mirrored' : 'mirrored'];
  return TURN_WORDS[turn.isUpsideDown ? 'half-turn' : 'right'];
}

export function verdictFor(
  { readings, decided, expected }: Found,
  seen: Values,
): Outcome['verdict'] {
  if (readings.length === 0) {
    return {
      level: 'stop',
      sentence:
        'No film can be threaded so on this path: look again at lettering, heads and movement, and count the mirrors. If you see the same again, the print itself is odd, and its lettering decides.',
    };
  }
  if (decided === undefined) {
    const missing = [
      ...(seen.rows === 'not-looked' ? ['holes'] : []),
      ...(seen.heads === 'not-looked' ? ['heads'] : []),
      ...(seen.lettering === 'not-looked' ? ['lettering'] : []),
      ...(seen.motion === 'not-looked' ? ['movement'] : []),
    ].join(', ');
    const isUnseen = [seen.heads, seen.lettering, seen.motion].every(
      (seen) => seen === 'not-looked',
    );
    const causes = readings.map(({ film }) => causeWords(film)).join(', or ');
    return {
      level: 'care',
      sentence: isUnseen
        ? `Not looked at yet: play the first seconds and choose what you see. Still to look at: ${missing}.`
        : `Not decided yet: ${causes}. Still to look at: ${missing}.`,
    };
  }
  const { film } = decided;
  if (film.isTailFirst || film.isBackToFront) {
    return {
      level: 'stop',
      sentence: `Stop: ${causeWords(film)}. Put it right at the machine, not in the file.`,
    };
  }
  const file = fileWords(expected);
  const filters = turnFilters(expected);
  const end =
    filters.length === 0 ? 'the file needs no turn.' : `turn the picture in the file, ${file}.`;
  if (seen.lettering === 'not-looked' || seen.motion === 'not-looked') {
    const missing = seen.lettering === 'not-looked' ? 'some lettering' : 'something that moves';
    return {
      level: 'care',
      sentence: `The film seems to be threaded right; ${end} Find ${missing} before you record the reel: nothing else shows an odd print.`,
    };
  }
  return {
    level: 'good',
    sentence: `The film is threaded right, and this is what the camera sees of it on this path; ${end}`,
  };
}
