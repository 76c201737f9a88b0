// Inputs on what a recording shows and says, for the worksheets that give commands.
import {
  HALF_TURN,
  LEFT_TO_RIGHT,
  RIGHT_WAY_ROUND,
  TOP_TO_BOTTOM,
  type PictureTurn,
} from '../../core/gate/picture-turn.ts';
import type { CodeRange } from '../../core/file/recorded-picture.ts';
import type { ChoiceInput } from '../machine/types.ts';

/** Ways round in words, and as the core knows them. */
export const PICTURE_TURNS: Readonly<Record<TurnName, PictureTurn>> = {
  'upside-down-mirrored': TOP_TO_BOTTOM,
  'half-turn': HALF_TURN,
  mirrored: LEFT_TO_RIGHT,
  right: RIGHT_WAY_ROUND,
};

export type TurnName = 'upside-down-mirrored' | 'half-turn' | 'mirrored' | 'right';

export const TURN_WORDS = {
  'upside-down-mirrored': 'heads down, lettering mirrored',
  'half-turn': 'heads down, lettering right when you turn your head',
  mirrored: 'heads up, lettering mirrored',
  right: 'heads up, lettering right',
} as const satisfies Readonly<Record<TurnName, string>>;

export const pictureTurnInput = {
  kind: 'choice',
  label: 'Picture in the recording',
  options: TURN_WORDS,
  default: 'upside-down-mirrored',
  help: 'Look for lettering. A camera that looks straight into the gate records heads down and mirrored; the command turns it the right way round.',
} as const satisfies ChoiceInput;

export const codeRangeInput = {
  kind: 'choice',
  label: 'Range and matrix that the recording names',
  options: {
    'not-asked': 'not asked yet',
    limited: 'limited (tv) or no range, with a matrix',
    'limited-unnamed': 'limited (tv) or no range, no matrix',
    'full-bt709': 'full (pc), bt709',
    'full-bt601': 'full (pc), smpte170m or bt470bg',
    'full-unnamed': 'full (pc), no matrix',
  },
  default: 'not-asked',
  help: 'From the lines color_range and color_space that the first command of “Files, space and checks” prints; “unknown” is none. Full range must be chosen here, or 256 levels become 220.',
} as const satisfies ChoiceInput;

/** Range to write a command for: most video is limited, so that is written until the file was asked. */
export function codeRangeForCommand(choice: keyof typeof codeRangeInput.options): CodeRange {
  return choice === 'not-asked' ? 'limited' : choice;
}

/** What to say beside a command that was written without asking the file. */
export const RANGE_NOT_ASKED =
  'Nobody asked the recording for its range. The command is written for limited range; a recording of full range would lose 36 of its 256 levels in it, for good. Run the first command of “Files, space and checks” first, and choose here what it prints.';
