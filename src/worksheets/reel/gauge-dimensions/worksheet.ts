import { exactStepByRule } from '../../../core/reel/film-length.ts';
import { filmStrip, type StripSound } from '../../../core/reel/film-strip.ts';
import {
  frameStepMillimetres,
  GAUGE_NAMES,
  GAUGES,
  nativeRatesFor,
} from '../../../core/reel/gauges.ts';
import type { GaugeId, NativeRate, PerforationPosition } from '../../../core/reel/gauges/gauge.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { quantity, words } from '../../machine/answers.ts';
import { defineWorksheet } from '../../machine/define-worksheet.ts';
import type { FilmStripData } from '../../machine/picture-data.ts';
import { hedge, lengthText } from '../../machine/provenance-words.ts';
import { POSITION_NAMES } from '../perforation-words.ts';
import {
  PROJECTOR_FIT_LABEL,
  projectorFit,
  projectorFitAnswer,
  projectorGaugeInput,
} from '../projector-gauge-input.ts';
import { dimensionsTable, NONE, pictureText } from './dimensions-table.ts';

const SOUND_WORDS = { magnetic: 'a magnetic stripe', optical: 'an optical sound track' } as const;

function ratesText(rates: readonly NativeRate[]): string {
  return rates.map(({ filmFps, use }) => `${filmFps} (${use})`).join('; ');
}

function stripPicture(gauge: GaugeId, sound: StripSound): FilmStripData {
  const { name, perforation } = GAUGES[gauge];
  const strip = filmStrip(gauge, sound);
  const [first, second] = perforation.positions;
  const drawn = sound !== 'none' && second !== undefined ? second : first;
  const place = drawn === undefined ? '' : `, holes ${POSITION_NAMES[drawn]}`;
  const track = sound === 'none' ? '' : `, with ${SOUND_WORDS[sound]} along one edge`;
  return {
    name: 'film-strip',
    alternative: `${name} film to scale: ${formatNumber(strip.widthMillimetres, 4)} mm wide, ${formatNumber(strip.pitchMillimetres, 4)} mm to a frame${place}${track}.`,
    ...strip,
  };
}

/** Where the holes of such a film can be: an optical track takes the place of a second row. */
function holesText(positions: readonly PerforationPosition[], sound: StripSound): string {
  const single = positions.filter((position) => position !== 'both-edges-at-frame-line');
  const possible = sound === 'optical' && single.length > 0 ? single : positions;
  return possible.map((position) => POSITION_NAMES[position]).join(', or ');
}

export const worksheet = defineWorksheet({
  id: 'gauge-dimensions',
  title: 'Dimensions of a gauge',
  question: 'What are the dimensions of this gauge, and how sure are they?',
  chapter: 'reel/gauges',
  inputs: {
    gauge: {
      kind: 'choice',
      label: 'Gauge',
      options: GAUGE_NAMES,
      default: 'super-8',
      help: 'All values are for new film.',
      bench: 'reel.gauge',
    },
    sound: {
      kind: 'choice',
      label: 'Sound on the film',
      options: { none: 'none seen', magnetic: 'magnetic stripe', optical: 'optical track' },
      default: 'none',
      help: 'Drawn in its place on the strip, and it decides which native rate to try first. An optical track lies opposite the holes.',
    },
    projectorGauge: projectorGaugeInput,
  },
  model:
    'A table of published values for new film, each with its source. Where sources disagree, the recommended value stands first and the others follow. The sideways place of the picture in the drawing is the middle of the clear width, because no published place could be read; use the drawing to tell gauges apart, not to cut a mask.',
  answers: {
    filmWidthMillimetres: 'Film width',
    frameStepMillimetres: 'Frame step, long pitch',
    hundredPitchesMillimetres: '100 pitches, long',
    shortPitch: 'Short pitch',
    framesPerFoot: 'Frames to the foot, by convention',
    framesPerMetre: 'Frames to the metre, by the pitch',
    framesPerMetreByFoot: 'Frames to the metre, by the foot',
    hole: 'Hole, width × height',
    cameraPicture: 'Camera picture',
    projectedPicture: 'Projected picture',
    nativeRates: 'Native rates',
    ratesToTry: 'To try first, with this sound',
    soundAhead: 'Sound ahead of picture',
    onProjector: PROJECTOR_FIT_LABEL,
  },
  find({ gauge, sound, projectorGauge }) {
    return {
      entry: GAUGES[gauge],
      step: frameStepMillimetres(gauge, 'long'),
      stepByFoot: exactStepByRule(gauge, 'frames-per-foot').valueOf(),
      ratesToTry: nativeRatesFor(gauge, sound),
      fit: projectorFit(gauge, projectorGauge),
    };
  },
  outcome({ entry, step, stepByFoot, ratesToTry, fit }, { gauge, sound }) {
    const { long, short } = entry.pitch;
    const { width, height, positions } = entry.perforation;
    return {
      verdict:
        fit !== undefined && fit.level !== 'good'
          ? { level: fit.level, sentence: fit.sentence }
          : {
              level: 'note',
              sentence: `${entry.name} is ${lengthText(entry.filmWidth)} wide, ${formatNumber(step, 4)} mm from frame to frame, with holes ${holesText(positions, sound)}.`,
            },
      answers: {
        filmWidthMillimetres: words(lengthText(entry.filmWidth)),
        frameStepMillimetres: quantity(step, 'mm', 5),
        hundredPitchesMillimetres: words(lengthText(long.hundredPitches)),
        shortPitch: words(short === undefined ? NONE : lengthText(short)),
        framesPerFoot: quantity(entry.framesPerFoot.frames, 'frames', 3),
        framesPerMetre: quantity(1000 / step, 'frames', 5),
        framesPerMetreByFoot: quantity(1000 / stepByFoot, 'frames', 5),
        hole: words(
          `${hedge(width)}${formatNumber(width.millimetres, 4)} × ${formatNumber(height.millimetres, 4)}\u00a0mm`,
        ),
        cameraPicture: words(pictureText(entry.cameraPicture[0])),
        projectedPicture: words(pictureText(entry.projectedPicture[0])),
        nativeRates: words(ratesText(entry.nativeRates)),
        ratesToTry: words(ratesText(ratesToTry) || NONE),
        soundAhead: words(
          entry.soundTracks
            .map((track) => `${hedge(track)}${track.framesAhead} frames (${track.system})`)
            .join(', ') || NONE,
        ),
        onProjector: projectorFitAnswer(fit),
      },
      tables: [dimensionsTable(entry)],
      pictures: [stripPicture(gauge, sound)],
    };
  },
  working({ entry }, told) {
    const pitch = formatNumber(entry.pitch.long.millimetres, 5);
    return [
      {
        words: 'The frame step is the pitch times the perforations of one frame.',
        sum: `${pitch} mm × ${entry.perforationsPerFrame} = ${told('frameStepMillimetres')}`,
      },
      {
        words: 'A metre divided by the frame step gives the frames to the metre.',
        sum: `1000 mm ÷ ${told('frameStepMillimetres')} = ${told('framesPerMetre')}`,
      },
      {
        words: 'The convention counts whole frames to a foot of 304.8 mm.',
        sum: `1000 ÷ 304.8 × ${entry.framesPerFoot.frames} = ${told('framesPerMetreByFoot')}`,
      },
    ];
  },
  cautions: [
    'Values marked “about” are from memory: check the standard before you make a part to them.',
    'Old film is smaller than these values by its shrinkage.',
  ],
  sources: [
    'smpte-149-2004',
    'smpte-239-2004',
    'asa-z22-5-1947',
    'smpte-101-2003',
    'smpte-16-on-35',
    'smpte-102-2002',
    'smpte-153-2001',
    'smpte-154-157',
    'smpte-164-2002',
    'smpte-41',
    'offenhauser-16mm',
    'wheeler-1953',
    'gale-making-better-movies',
    'de-encyclopaedia-filmschritt',
    'de-encyclopaedia-16mm',
    'encyclopaedia-8mm',
    'encyclopaedia-9-5mm',
    'encyclopaedia-film-perforations',
    'movies-tech-faq',
    'video-compression-guide',
    'pritchard-glossary',
    'hobby-sound-article',
    'dilettantes-dictionary',
    'cinematographic-annual-1931',
    'iso-26-1993',
    'jsmpte-56-1951',
    'iso-69-1998',
    'australian-movie-makers-55',
    'lerman-1974',
    'from-memory',
    'common-practice',
  ],
});
