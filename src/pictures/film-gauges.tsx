import type { ComponentChildren } from 'preact';
import type { FilmGaugesData } from '../worksheets/picture-data.ts';
import { Film } from './film-strip/film.tsx';
import { ScaleBar } from './shapes/dimension.tsx';
import { Drawing, HatchPattern, Label } from './shapes/drawing.tsx';
import { at, PAGE_WIDTH, TEXT_HEIGHT } from './shapes/page.ts';

/** Room between two strips, for labels wider than their strip. */
const GAP = 40;
/** The sign of a film that fits stands above its strip, where no label is in its way. */
const SIGN_Y = 20;
const TOP = 30;
/** Frames of the largest gauge that are shown. */
const FRAMES = 3.3;
const TALLEST = 260;
const SCALE_MILLIMETRES = 10;

interface Props {
  readonly picture: FilmGaugesData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** Films of several gauges side by side, all at the same scale. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { films } = picture;
  const widthMillimetres = films.reduce((sum, { film }) => sum + film.widthMillimetres, 0);
  const lengthMillimetres =
    FRAMES * films.reduce((most, { film }) => Math.max(most, film.pitchMillimetres), 1);
  const perMillimetre = Math.min(
    (PAGE_WIDTH - GAP * Math.max(1, films.length)) / Math.max(1, widthMillimetres),
    TALLEST / lengthMillimetres,
  );
  const gap = (PAGE_WIDTH - widthMillimetres * perMillimetre) / Math.max(1, films.length);
  const height = lengthMillimetres * perMillimetre;
  const lefts = films.map(
    (_, index) =>
      gap / 2 +
      films
        .slice(0, index)
        .reduce((sum, { film }) => sum + film.widthMillimetres * perMillimetre + gap, 0),
  );
  const labelY = TOP + height + TEXT_HEIGHT;
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={labelY + 2.6 * TEXT_HEIGHT}
    >
      <defs>
        <HatchPattern id={`${instance}-hatch`} />
        {films.map(({ label, film }, index) => (
          <clipPath key={label} id={`${instance}-strip-${index}`}>
            <rect
              x={at(lefts[index] ?? 0)}
              y={TOP}
              width={at(film.widthMillimetres * perMillimetre)}
              height={at(height)}
            />
          </clipPath>
        ))}
      </defs>
      {films.map(({ label, isMarked, film }, index) => (
        <g key={label}>
          <Film
            film={film}
            lengthMillimetres={lengthMillimetres}
            left={lefts[index] ?? 0}
            top={TOP}
            perMillimetre={perMillimetre}
            clipId={`${instance}-strip-${index}`}
            hatchId={`${instance}-hatch`}
          />
          <Label
            x={(lefts[index] ?? 0) + (film.widthMillimetres * perMillimetre) / 2}
            y={labelY}
            anchor="middle"
          >
            {label}
          </Label>
          {isMarked && (
            <Label
              x={(lefts[index] ?? 0) + (film.widthMillimetres * perMillimetre) / 2}
              y={SIGN_Y}
              anchor="middle"
              tone="strong"
            >
              ✓ fits
            </Label>
          )}
        </g>
      ))}
      <ScaleBar
        x={2}
        y={labelY + 2.2 * TEXT_HEIGHT}
        length={SCALE_MILLIMETRES * perMillimetre}
        text={`${SCALE_MILLIMETRES}\u00a0mm`}
      />
    </Drawing>
  );
}
