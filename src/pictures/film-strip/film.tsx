import type { ComponentChildren } from 'preact';
import type { FilmShape } from '../../worksheets/machine/picture-data.ts';
import { Box } from '../shapes/drawing.tsx';
import { at } from '../shapes/page.ts';

/** No strip is drawn with more frames than this, however short they are. */
const MOST_FRAMES = 60;

interface Props {
  readonly film: FilmShape;
  readonly lengthMillimetres: number;
  /** Upper left corner on the page. */
  readonly left: number;
  readonly top: number;
  readonly perMillimetre: number;
  /** Ids of a clip path over the strip and of a hatch, defined by the picture. */
  readonly clipId: string;
  readonly hatchId: string;
}

/** A length of film at a scale: base, stripes, pictures and holes, cut at both ends. */
export function Film(props: Props): ComponentChildren {
  const { film, lengthMillimetres, left, top, perMillimetre, clipId, hatchId } = props;
  const { pitchMillimetres, widthMillimetres, perforations, stripes, picture } = film;
  const x = (millimetres: number): number => left + millimetres * perMillimetre;
  const y = (millimetres: number): number => top + millimetres * perMillimetre;
  const frames = Math.min(MOST_FRAMES, Math.ceil(lengthMillimetres / pitchMillimetres) + 2);
  /** The same box in each frame, from the one above the strip. */
  const column = (patch: FilmShape['picture']): string =>
    boxesDown({
      left: x(patch.leftMillimetres),
      top: y(patch.centreMillimetres - patch.heightMillimetres / 2 - pitchMillimetres),
      width: patch.widthMillimetres * perMillimetre,
      height: patch.heightMillimetres * perMillimetre,
      step: pitchMillimetres * perMillimetre,
      count: frames,
    });
  const length = lengthMillimetres * perMillimetre;
  return (
    <g clip-path={`url(#${clipId})`}>
      <Box
        class="pic-tint"
        x={left}
        y={top}
        width={widthMillimetres * perMillimetre}
        height={length}
      />
      {stripes.map((stripe) => {
        const band = {
          x: x(stripe.leftMillimetres),
          y: top - 2,
          width: stripe.widthMillimetres * perMillimetre,
          height: length + 4,
        };
        return stripe.system === 'magnetic' ? (
          <Box
            key={stripe.leftMillimetres}
            class="pic-share pic-outlined"
            {...band}
            fill={`url(#${hatchId})`}
          />
        ) : (
          <g key={stripe.leftMillimetres}>
            <Box class="pic-image pic-outlined" {...band} />
            <path class="pic-blank pic-outlined" d={wave(band)} />
          </g>
        );
      })}
      <path class="pic-image pic-outlined" d={column(picture)} />
      <path class="pic-blank pic-outlined" d={perforations.map(column).join('')} />
      <path
        class="pic-edge"
        d={`M${at(x(0))} ${at(top)}v${at(length)}M${at(x(widthMillimetres))} ${at(top)}v${at(length)}`}
      />
    </g>
  );
}

/**
 * Path of equal boxes, one below the other. Corners are square, and each box but the first is a
 * relative move and the same letters again: a page of film then packs into few bytes.
 */
function boxesDown(boxes: {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly step: number;
  readonly count: number;
}): string {
  const { left, top, width, height, step, count } = boxes;
  const box = `h${at(width)}v${at(height)}h-${at(width)}z`;
  return `M${at(left)} ${at(top)}${Array.from({ length: count }, () => box).join(`m0 ${at(step)}`)}`;
}

/** Outline of a sound track of variable area: a clear band whose edges swing. */
function wave(band: {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}): string {
  const half = 5;
  const swing = at(band.width * 0.22);
  const turns = Math.ceil(band.height / (2 * half));
  const down = `l-${swing} ${half}l${swing} ${half}`.repeat(turns);
  const up = `l${swing}-${half}l-${swing}-${half}`.repeat(turns);
  return `M${at(band.x + band.width * 0.4)} ${at(band.y)}${down}h${at(band.width * 0.2)}${up}z`;
}
