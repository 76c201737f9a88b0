import type { PicturePath } from '../../../core/gate/picture-way.ts';
import type { InputSpecs } from '../../machine/types.ts';

export const PATHS = {
  gate: 'camera looks straight into the gate, lens out',
  'gate-mirror': 'camera looks into the gate over one mirror at its side',
  'screen-front': 'camera films a screen from the projector’s side',
  'screen-front-mirror': 'camera films a screen over one mirror',
  'screen-behind': 'camera films a translucent screen from behind',
} as const satisfies Readonly<Record<PicturePath, string>>;

export const PATH_NAMES = Object.keys(PATHS) as readonly PicturePath[];

export const inputs = {
  path: {
    kind: 'choice',
    label: 'Path of the light',
    options: PATHS,
    default: 'gate',
    help: 'How the camera sees the film.',
  },
  camera: {
    kind: 'choice',
    label: 'Camera stands',
    options: { upright: 'upright', 'upside-down': 'on its head' },
    default: 'upright',
    help: 'Switch off the camera’s own setting that turns the picture; many have one.',
  },
  rows: {
    kind: 'choice',
    label: 'Holes',
    options: {
      single: 'one row',
      symmetric: 'two rows, or holes in the middle',
      'not-looked': 'not looked at',
    },
    default: 'not-looked',
    help: 'A single row fits the claw on one side only. Two rows and holes in the middle fit either way, so holes that were not looked at count as such.',
  },
  heads: {
    kind: 'choice',
    label: 'Heads',
    options: { down: 'down', up: 'up', 'not-looked': 'not looked at' },
    default: 'not-looked',
    help: 'In the recording, before anything turns it. People, trees, horizon.',
  },
  lettering: {
    kind: 'choice',
    label: 'Lettering',
    options: {
      mirrored: 'mirrored',
      right: 'reads right, if need be with your head turned',
      'not-looked': 'none found yet',
    },
    default: 'not-looked',
    help: 'A title, a street sign, a boat’s name, a number plate. A picture that is upside down but not mirrored reads right when you turn your head.',
  },
  motion: {
    kind: 'choice',
    label: 'Movement',
    options: {
      forwards: 'forwards',
      backwards: 'backwards',
      'not-looked': 'not looked at',
    },
    default: 'not-looked',
    help: 'Somebody who walks, jumps into the water, pours a drink.',
  },
} as const satisfies InputSpecs;
