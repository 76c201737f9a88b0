import type { Gauge, PictureSize, Provenance } from '../../../core/reel/gauges/gauge.ts';
import { formatNumber } from '../../../quantity/format.ts';
import { hedge, lengthText, STATUS_WORDS } from '../../machine/provenance-words.ts';
import type { ResultTable } from '../../machine/types.ts';
import { POSITION_NAMES } from '../perforation-words.ts';

export const NONE = 'none known';

export function pictureText(size: PictureSize | undefined): string {
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

export function dimensionsTable(gauge: Gauge): ResultTable {
  return {
    caption: `Dimensions of new ${gauge.name} film`,
    columns: ['Dimension', 'Value', 'How it is known', 'Source', 'Note'],
    rows: lines(gauge).map(([label, value, { status, source, note }]) => ({
      cells: [label, value, STATUS_WORDS[status], source, note ?? '–'],
    })),
  };
}
