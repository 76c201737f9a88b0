import { formatQuantity } from '../../quantity/format.ts';
import { framesSeconds } from '../../core/file/sound-separation.ts';
import type { SoundStripData } from '../machine/picture-data.ts';

/** Gate, sound and reader along the film, in frames from the gate. */
export function soundStripPicture(
  frames: number,
  lateFrames: number,
  filmFps: number,
  isReadInGate: boolean,
): SoundStripData {
  const separation = `${formatQuantity(frames, 'frames')} = ${formatQuantity(framesSeconds(frames, filmFps), 's')}`;
  const gap = formatQuantity(Math.abs(lateFrames), 'frames');
  const gapText = lateFrames === 0 ? '' : `sound ${gap} ${lateFrames > 0 ? 'late' : 'early'}`;
  const readText = isReadInGate ? 'sound is read here' : 'sound head';
  return {
    name: 'sound-strip',
    alternative: `The sound of the picture in the gate lies ${separation} further along the film. ${
      lateFrames === 0
        ? 'The sound head stands there.'
        : `It is read ${lateFrames > 0 ? 'further along' : 'before that'}: ${gapText}.`
    }`,
    separationFrames: frames,
    separationText: `to its sound: ${separation}`,
    readFrames: frames + lateFrames,
    readText,
    gapText,
  };
}
