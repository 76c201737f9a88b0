import { LIGHT_SOURCES, type LightSourceId } from '../../../core/gate/film-light.ts';
import type { InputSpecs } from '../../machine/types.ts';
import { filmFpsInput, openPercentInput } from '../gate-inputs.ts';
import {
  fNumberInput,
  fillPercentInput,
  pictureGaugeInput,
  pictureWidthInput,
  sensorWidthInput,
} from '../lens-inputs.ts';

const SOURCE_NAMES = Object.fromEntries(
  Object.entries(LIGHT_SOURCES).map(([id, { name }]) => [id, name]),
) as Readonly<Record<LightSourceId, string>>;

export const inputs = {
  source: {
    kind: 'choice',
    label: 'Light in the gate',
    options: SOURCE_NAMES,
    default: 'filament',
    help: 'What lights the film from behind. It decides how much heat comes with the light.',
  },
  lampLux: {
    kind: 'optional-quantity',
    label: 'Light in the open gate, measured',
    unit: 'lx',
    minimum: 1,
    maximum: 100_000_000,
    default: '',
    accepted: '300000 or 5000000 lx',
    help: 'Empty: ten million lux, the most to plan on. To measure, run the machine without film and read a lux meter on the screen: lux × area of the screen picture ÷ area of the gate picture ÷ open fraction. The lens takes away a little more than this sum allows for.',
  },
  gauge: pictureGaugeInput,
  pictureWidthMillimetres: pictureWidthInput,
  sensorWidthMillimetres: sensorWidthInput,
  fillPercent: fillPercentInput,
  fNumber: fNumberInput,
  sensitivity: {
    kind: 'quantity',
    label: 'Sensitivity (ISO)',
    unit: 'iso',
    minimum: 1,
    maximum: 1_000_000,
    default: '100',
    accepted: '100 or 400',
    help: 'The lowest native setting of the camera.',
  },
  exposureSeconds: {
    kind: 'quantity',
    label: 'Exposure time',
    unit: 's',
    minimum: 0.0001,
    maximum: 1,
    default: '1/54',
    accepted: '1/54 or 18.5 ms',
    help: 'The one that matches the shutter.',
    bench: 'camera.exposureSeconds',
  },
  filmFps: filmFpsInput,
  openPercent: openPercentInput,
} as const satisfies InputSpecs;
