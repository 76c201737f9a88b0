import type { SoundCommands } from '../../core/file/sound-commands.ts';
import type { Outcome } from '../machine/types.ts';

/** A correction of the sound as commands to copy, one for each tool; none where nothing is to be done. */
export function labelledSoundCommands(
  what: string,
  commands: SoundCommands | undefined,
): NonNullable<Outcome['commands']> {
  if (commands === undefined) return [];
  return [
    { label: `${what}, with ffmpeg`, text: commands.ffmpeg },
    { label: `${what}, with sox`, text: commands.sox },
  ];
}
