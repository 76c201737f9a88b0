import type Fraction from 'fraction.js';
import { commandRate } from './command-rate.ts';
import { FILE_NAMES } from './file-names.ts';
import { frameTest } from './frame-filter.ts';

/** A recording every frame of which was proven to stand alone. */
export interface IntraOnlyProof {
  readonly isIntraOnly: true;
  /** Wrapper of the recording; only these keep the new rate. */
  readonly wrapper: 'mov' | 'mp4';
}

/** Where the command is pasted; each takes lines of another length. */
export type CommandShell = 'posix' | 'windows';

/**
 * Longest single command, characters. Linux takes 131,072 bytes in one argument and the Windows command
 * prompt 8,191 in a line (both from memory); some is kept for longer folder and file names.
 */
const LONGEST_COMMAND: Readonly<Record<CommandShell, number>> = { posix: 130_000, windows: 8_000 };

/** Commands that copy the kept frames without decoding them. */
export interface PacketDropCommands {
  /** One command, or one for each part of the film. */
  readonly commands: readonly string[];
  /** Where there are parts: text of the list of parts, and the command that joins them. */
  readonly join: { readonly listText: string; readonly command: string } | undefined;
}

/**
 * Commands that copy exactly the listed frames of an intra-only recording byte for byte, at the native
 * rate. Split into parts where the system's command line is too short for the whole list, and joined
 * again.
 *
 * Model: packets are counted from 0 in the order of the file, which is the order of the pictures where
 * every frame stands alone; the time scale is set, or the wrapper rounds the rate.
 *
 * @param proof         that every frame of the recording stands alone
 * @param cameraFrames  frames wanted, counted from 0; whole, ascending, at least one
 * @param nativeFps     native rate, frames/s; 0.5–1000
 * @param shell         where the command is pasted
 * @returns the commands; undefined without the proof, because frames that lean on dropped ones break
 *          without any message
 * @throws {OutOfRangeError} names the argument, the value given and the accepted range
 * @source ffmpeg-documentation
 */
export function packetDropCommands(
  proof: IntraOnlyProof | undefined,
  cameraFrames: readonly number[],
  nativeFps: Fraction,
  shell: CommandShell,
): PacketDropCommands | undefined {
  if (proof === undefined) return undefined;
  const { top, bottom } = commandRate('nativeFps', nativeFps);
  const times = bottom === '1' ? 'ts=N:duration=1' : `ts=N*${bottom}:duration=${bottom}`;
  const command = (frames: readonly number[], into: string): string =>
    `ffmpeg -i "${FILE_NAMES.recording}" -map 0:v:0 -c copy -bsf:v "noise=drop='not(${frameTest(frames)})',setts=${times}:time_base=1/${top}" -video_track_timescale ${top} ${into}`;
  const whole = command(cameraFrames, `${FILE_NAMES.copiedFilm}.${proof.wrapper}`);
  if (whole.length <= LONGEST_COMMAND[shell]) return { commands: [whole], join: undefined };

  const partName = (part: number): string => `${FILE_NAMES.copiedFilm}-${part}.${proof.wrapper}`;
  let parts = Math.ceil(whole.length / LONGEST_COMMAND[shell]);
  for (;;) {
    const size = Math.ceil(cameraFrames.length / parts);
    const commands = Array.from({ length: Math.ceil(cameraFrames.length / size) }, (_, part) =>
      command(cameraFrames.slice(part * size, (part + 1) * size), partName(part + 1)),
    );
    if (size === 1 || commands.every((each) => each.length <= LONGEST_COMMAND[shell])) {
      return {
        commands,
        join: {
          listText: commands.map((_, part) => `file '${partName(part + 1)}'\n`).join(''),
          command: `ffmpeg -f concat -i ${FILE_NAMES.partList} -c copy -video_track_timescale ${top} ${FILE_NAMES.copiedFilm}.${proof.wrapper}`,
        },
      };
    }
    parts += 1;
  }
}
