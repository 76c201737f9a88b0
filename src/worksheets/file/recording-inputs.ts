// Inputs on what a recording shows and says, for the worksheets that give commands.
import {
  HALF_TURN,
  LEFT_TO_RIGHT,
  RIGHT_WAY_ROUND,
  TOP_TO_BOTTOM,
  type PictureTurn,
} from '../../core/gate/picture-turn.ts';
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
    limited: 'limited (tv) or no range, with a matrix',
    'limited-unnamed': 'limited (tv) or no range, no matrix',
    'full-bt709': 'full (pc), bt709',
    'full-bt601': 'full (pc), smpte170m or bt470bg',
    'full-unnamed': 'full (pc), no matrix',
  },
  default: 'limited',
  help: 'From the lines color_range and color_space that the first command of “Files, space and checks” prints; “unknown” is none. Full range must be chosen here, or 256 levels become 220.',
} as const satisfies ChoiceInput;
