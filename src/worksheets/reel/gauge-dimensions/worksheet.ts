import { exactStepByRule } from '../../../core/reel/film-length.ts';
import { filmStrip, type StripSound } from '../../../core/reel/film-strip.ts';
import {
  frameStepMillimetres,
  GAUGE_NAMES,
  GAUGES,
  nativeRatesFor,
} from '../../../core/reel/gauges.ts';
import type {
  Gauge,
  GaugeId,
  NativeRate,
  PictureSize,
  Provenance,
} from '../../../core/reel/gauges/gauge.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { quantityAnswer, wordsAnswer } from '../../machine/labelled-answers.ts';
import { POSITION_NAMES } from '../perforation-words.ts';
import { projectorFit, projectorFitAnswer, projectorGaugeInput } from '../projector-gauge-input.ts';
import { hedge, lengthText, STATUS_WORDS } from '../../machine/provenance-words.ts';
import type { FilmStripData } from '../../machine/picture-data.ts';
import { defineWorksheet, type ResultTable } from '../../machine/types.ts';

const NONE = 'none known';

function pictureText(size: PictureSize | undefined): string {
  if (size === undefined) return NONE;
  const { widthMillimetres, heightMillimetres } = size;
  return `${hedge(size)}${formatNumber(widthMillimetres, 4)} × ${formatNumber(heightMillimetres, 4)}\u00a0mm`;
}

type Line = readonly [string, string, Provenance];

/** Every dimension of a gauge as a line of the table. */
function lines(gauge: Gauge): readonly Line[] {
  const { long, short } = gauge.pitch;
  const { width, height, edgeDistance, positions, positionOrigin } = gauge.perforation;
  const sizeLines = (label: string, sizes: readonly PictureSize[]): readonly Line[] =>
    sizes.map((size, index): Line => [
      index === 0 ? label : `${label}, also printed`,
      pictureText(size),
      size,
    ]);
  return [
    ['Film width', lengthText(gauge.filmWidth), gauge.filmWidth],
    ['Pitch, long', lengthText(long), long],
    ['100 pitches, long', lengthText(long.hundredPitches), long.hundredPitches],
    ...(short === undefined
      ? []
      : ([
          ['Pitch, short', lengthText(short), short],
          ['100 pitches, short', lengthText(short.hundredPitches), short.hundredPitches],
        ] as const satisfies readonly Line[])),
    ['Frames to the foot, by convention', String(gauge.framesPerFoot.frames), gauge.framesPerFoot],
    ['Hole, width', lengthText(width), width],
    ['Hole, height', lengthText(height), height],
    ...(edgeDistance === undefined
      ? []
      : ([
          ['Edge to hole', lengthText(edgeDistance), edgeDistance],
        ] as const satisfies readonly Line[])),
    [
      'Holes are',
      positions.map((position) => POSITION_NAMES[position]).join(', or '),
      positionOrigin,
    ],
    ...sizeLines('Camera picture', gauge.cameraPicture),
    ...sizeLines('Projected picture', gauge.projectedPicture),
    ...gauge.nativeRates.map((rate): Line => [
      `Native rate, ${rate.use}`,
      `${hedge(rate)}${rate.filmFps}${rate.toleranceFps === undefined ? '' : ` ± ${rate.toleranceFps}`} frames/s`,
      rate,
    ]),
    ...gauge.soundTracks.map((track): Line => [
      `Sound ahead of picture, ${track.system}`,
      `${hedge(track)}${track.framesAhead} frames`,
      track,
    ]),
  ];
}

function dimensionsTable(gauge: Gauge): ResultTable {
  return {
    caption: `Dimensions of new ${gauge.name} film`,
    columns: ['Dimension', 'Value', 'How it is known', 'Source', 'Note'],
    rows: lines(gauge).map(([label, value, { status, source, note }]) => ({
      cells: [label, value, STATUS_WORDS[status], source, note ?? '–'],
    })),
  };
}

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
  compute({ gauge, sound, projectorGauge }) {
    const entry = GAUGES[gauge];
    const { long, short } = entry.pitch;
    const { width, height, positions } = entry.perforation;
    const step = frameStepMillimetres(gauge, 'long');
    const fit = projectorFit(gauge, projectorGauge);
    return {
      verdict:
        fit !== undefined && fit.level !== 'good'
          ? { level: fit.level, sentence: fit.sentence }
          : {
              level: 'note',
              sentence: `${entry.name} is ${lengthText(entry.filmWidth)} wide, ${formatNumber(step, 4)} mm from frame to frame, with holes ${positions.map((position) => POSITION_NAMES[position]).join(', or ')}.`,
            },
      answers: {
        filmWidthMillimetres: wordsAnswer('Film width', lengthText(entry.filmWidth)),
        frameStepMillimetres: quantityAnswer('Frame step, long pitch', step, 'mm', 5),
        hundredPitchesMillimetres: wordsAnswer(
          '100 pitches, long',
          lengthText(long.hundredPitches),
        ),
        shortPitch: wordsAnswer('Short pitch', short === undefined ? NONE : lengthText(short)),
        framesPerFoot: quantityAnswer(
          'Frames to the foot, by convention',
          entry.framesPerFoot.frames,
          'frames',
          3,
        ),
        framesPerMetre: quantityAnswer(
          'Frames to the metre, by the pitch',
          1000 / step,
          'frames',
          5,
        ),
        framesPerMetreByFoot: quantityAnswer(
          'Frames to the metre, by the foot',
          1000 / exactStepByRule(gauge, 'frames-per-foot').valueOf(),
          'frames',
          5,
        ),
        hole: wordsAnswer(
          'Hole, width × height',
          `${hedge(width)}${formatNumber(width.millimetres, 4)} × ${formatNumber(height.millimetres, 4)}\u00a0mm`,
        ),
        cameraPicture: wordsAnswer('Camera picture', pictureText(entry.cameraPicture[0])),
        projectedPicture: wordsAnswer('Projected picture', pictureText(entry.projectedPicture[0])),
        nativeRates: wordsAnswer('Native rates', ratesText(entry.nativeRates)),
        ratesToTry: wordsAnswer(
          'To try first, with this sound',
          ratesText(nativeRatesFor(gauge, sound)) || NONE,
        ),
        soundAhead: wordsAnswer(
          'Sound ahead of picture',
          entry.soundTracks
            .map((track) => `${hedge(track)}${track.framesAhead} frames (${track.system})`)
            .join(', ') || NONE,
        ),
        onProjector: projectorFitAnswer(gauge, projectorGauge),
      },
      tables: [dimensionsTable(entry)],
      pictures: [stripPicture(gauge, sound)],
    };
  },
  working({ gauge }, { answers }) {
    const entry = GAUGES[gauge];
    const pitch = formatNumber(entry.pitch.long.millimetres, 5);
    return [
      {
        words: 'The frame step is the pitch times the perforations of one frame.',
        sum: `${pitch} mm × ${entry.perforationsPerFrame} = ${answers['frameStepMillimetres']?.text ?? ''}`,
      },
      {
        words: 'A metre divided by the frame step gives the frames to the metre.',
        sum: `1000 mm ÷ ${answers['frameStepMillimetres']?.text ?? ''} = ${answers['framesPerMetre']?.text ?? ''}`,
      },
      {
        words: 'The convention counts whole frames to a foot of 304.8 mm.',
        sum: `1000 ÷ 304.8 × ${entry.framesPerFoot.frames} = ${answers['framesPerMetreByFoot']?.text ?? ''}`,
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
    'from-memory',
    'common-practice',
  ],
});
