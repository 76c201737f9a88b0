import {
  azimuthDecibels,
  firstNullHz,
  SCANNED_TRACKS,
  spacingDecibels,
  wavelengthMillimetres,
  type ScannedTrackId,
} from '../../../core/file/head-losses.ts';
import { formatNumber, formatQuantity } from '../../../quantity/format.ts';
import { quantity } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import { runningFpsInput } from '../../machine/film-inputs.ts';
import type { InputSpecs, Outcome } from '../../machine/types.ts';

/** Loss that the ear lets pass, dB; practice. */
const HEARD_DECIBELS = -1;

const TRACK_NAMES = Object.fromEntries(
  Object.entries(SCANNED_TRACKS).map(([id, { name }]) => [id, name]),
) as Readonly<Record<ScannedTrackId, string>>;

const inputs = {
  track: {
    kind: 'choice',
    label: 'Sound track',
    options: TRACK_NAMES,
    default: 'super-8-stripe',
    help: 'Its width decides how much a slanted head loses.',
  },
  filmFps: runningFpsInput,
  frequencyHz: {
    kind: 'quantity',
    label: 'Tone',
    unit: 'Hz',
    minimum: 50,
    maximum: 20_000,
    default: '5000',
    accepted: '5000 or 5 kHz',
    help: 'Consonants lie at about 3 to 6 kHz.',
  },
  angleArcminutes: {
    kind: 'quantity',
    label: 'Head out of square',
    unit: 'arcmin',
    minimum: 0,
    maximum: 120,
    default: '15',
    accepted: '15, 15 arcmin or 0.25°',
    help: 'In minutes of arc; sixty are a degree. It cannot be read off the machine: try 5, 15 and 30 and see how much is lost.',
  },
  spacingMillimetres: {
    kind: 'quantity',
    label: 'Dirt between stripe and head',
    unit: 'mm',
    entryUnit: 'um',
    minimum: 0,
    maximum: 0.1,
    default: '1',
    accepted: '1, 1 µm or 0.5',
    help: 'A thousandth of a millimetre cannot be seen. It makes no difference to an optical track.',
  },
} as const satisfies InputSpecs;

function verdictFor(azimuth: number, spacing: number): Outcome['verdict'] {
  if (azimuth + spacing > HEARD_DECIBELS) {
    return {
      level: 'good',
      sentence: 'Together they cost less than the ear notices at this tone.',
    };
  }
  const total = formatQuantity(azimuth + spacing, 'dB', 2);
  return spacing < azimuth
    ? { level: 'care', sentence: `${total} at this tone, most of it dirt: clean the head first.` }
    : {
        level: 'care',
        sentence: `${total} at this tone, most of it the slant of the head: clean it, then have it set.`,
      };
}

export const worksheet = defineWorksheet({
  id: 'head-losses',
  title: 'Dull sound',
  question: 'How much treble do dirt and a slanted head cost?',
  chapter: 'file/sound',
  inputs,
  model:
    'A head whose slit is not square to the track hears early and late parts of a wave at once: 20 log10(sin x ÷ x), x = π × width × tan(angle) ÷ wavelength. Dirt holds the stripe off: 54.6 dB for each wavelength of distance, from memory. Both depend on the wavelength on the film, so slow film suffers most. Losses from the gap of the head and from the amplifier are added to these.',
  answers: {
    totalDecibels: 'Both together',
    azimuthDecibels: 'From the slant of the head',
    spacingDecibels: 'From dirt',
    silentKilohertz: 'Lowest tone that is lost altogether',
    wavelengthMillimetres: 'Length of one wave on the film',
  },
  find({ track, filmFps, frequencyHz, angleArcminutes, spacingMillimetres }) {
    const { gauge, widthMillimetres, isMagnetic } = SCANNED_TRACKS[track];
    const wave = wavelengthMillimetres(gauge, filmFps, frequencyHz);
    return {
      widthMillimetres,
      isMagnetic,
      wave,
      azimuth: azimuthDecibels(widthMillimetres, wave, angleArcminutes),
      spacing: isMagnetic ? spacingDecibels(spacingMillimetres, wave) : 0,
      silentHz:
        angleArcminutes === 0
          ? undefined
          : firstNullHz(widthMillimetres, wave * frequencyHz, angleArcminutes),
    };
  },
  outcome({ wave, azimuth, spacing, silentHz }) {
    return {
      verdict: verdictFor(azimuth, spacing),
      answers: {
        totalDecibels: quantity(azimuth + spacing, 'dB', 2, {
          level: azimuth + spacing > HEARD_DECIBELS ? 'good' : 'care',
        }),
        azimuthDecibels: quantity(azimuth, 'dB', 2),
        spacingDecibels: quantity(spacing, 'dB', 2),
        ...(silentHz === undefined
          ? {}
          : {
              silentKilohertz: quantity(silentHz / 1000, 'kHz', 3, { note: 'By the slant alone.' }),
            }),
        wavelengthMillimetres: quantity(wave, 'mm'),
      },
    };
  },
  working({ widthMillimetres, isMagnetic, wave }, told, values) {
    const slant =
      (Math.PI * widthMillimetres * Math.tan((values.angleArcminutes * Math.PI) / 10_800)) / wave;
    return [
      {
        words: 'Speed of the film divided by the tone is the length of one wave on the film.',
        sum: `${formatQuantity(wave * values.frequencyHz, 'mmPerSecond')} ÷ ${formatNumber(values.frequencyHz)} = ${told('wavelengthMillimetres')}`,
      },
      {
        words: 'Slant of the head across the track, against one wave, and the level that is left.',
        sum: `x = π × ${formatQuantity(widthMillimetres, 'mm')} × tan(${formatNumber(values.angleArcminutes)}′) ÷ ${told('wavelengthMillimetres')} = ${formatNumber(slant)}; 20 log10(sin x ÷ x), at least −60 dB: ${told('azimuthDecibels')}`,
      },
      ...(isMagnetic
        ? [
            {
              words: 'Distance divided by wavelength, times 54.6, is the level that dirt takes.',
              sum: `−54.6 × ${formatQuantity(values.spacingMillimetres * 1000, 'um')} ÷ ${formatQuantity(wave * 1000, 'um')}, at least −60 = ${told('spacingDecibels')}`,
            },
          ]
        : []),
    ];
  },
  cautions: [
    'Clean and set a head with the machine off and the plug pulled. The exciter lamp of an optical machine is hot. A sealed screw is for a technician.',
  ],
  sources: [
    'mcknight-azimuth',
    'from-memory',
    'smpte-164-2002',
    'smpte-101-2003',
    'smpte-41',
    'arithmetic',
  ],
});
