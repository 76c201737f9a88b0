import type { ComponentChildren } from 'preact';
import type { FilmShape } from '../../worksheets/picture-data.ts';
import { Box } from '../shapes/drawing.tsx';

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
  const cells = Array.from({ length: frames }, (_, index) => (index - 1) * pitchMillimetres);
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
      {stripes.map((stripe) => (
        <Box
          key={stripe.leftMillimetres}
          class="pic-share pic-outlined"
          x={x(stripe.leftMillimetres)}
          y={top - 2}
          width={stripe.widthMillimetres * perMillimetre}
          height={length + 4}
          fill={`url(#${hatchId})`}
        />
      ))}
      {cells.map((cell) => (
        <g key={cell}>
          <Box
            class="pic-image pic-outlined"
            x={x(picture.leftMillimetres)}
            y={y(cell + picture.centreMillimetres - picture.heightMillimetres / 2)}
            width={picture.widthMillimetres * perMillimetre}
            height={picture.heightMillimetres * perMillimetre}
            radius={3}
          />
          {perforations.map((hole) => (
            <Box
              key={`${hole.leftMillimetres} ${hole.centreMillimetres}`}
              class="pic-blank pic-outlined"
              x={x(hole.leftMillimetres)}
              y={y(cell + hole.centreMillimetres - hole.heightMillimetres / 2)}
              width={hole.widthMillimetres * perMillimetre}
              height={hole.heightMillimetres * perMillimetre}
              radius={Math.min(4, 0.13 * perMillimetre)}
            />
          ))}
        </g>
      ))}
      <path
        class="pic-edge"
        d={`M${x(0)} ${top}v${length}M${x(widthMillimetres)} ${top}v${length}`}
      />
    </g>
  );
}
