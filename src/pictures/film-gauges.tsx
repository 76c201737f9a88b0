import type { ComponentChildren } from 'preact';
import type { FilmBesideOthers, FilmGaugesData } from '../worksheets/machine/picture-data.ts';
import { Film } from './film-strip/film.tsx';
import { ScaleBar } from './shapes/dimension.tsx';
import { Drawing, HatchPattern, Label } from './shapes/drawing.tsx';
import { at, PAGE_WIDTH, TEXT_HEIGHT } from './shapes/page.ts';

/** Least room between two strips, for labels wider than their strip. */
const GAP = 40;
/** Room above a strip for the sign of a film that fits. */
const SIGN = 30;
/** Length of film that each strip shows, mm; the film apart shows half as much again. */
const LENGTH_MILLIMETRES = 20;
const APART_LENGTH_MILLIMETRES = 30;
const MOST_PER_MILLIMETRE = 7;
const LABEL_LINES = 2;
const SCALE_MILLIMETRES = 10;

interface Props {
  readonly picture: FilmGaugesData;
  /** Prefix of element ids; unique on the page. */
  readonly instance: string;
}

/** A strip with its place on the page. */
interface Placed {
  readonly entry: FilmBesideOthers;
  readonly left: number;
  readonly top: number;
  readonly lengthMillimetres: number;
  readonly labelX: number;
  readonly labelY: number;
  readonly labelAnchor: 'middle' | 'start';
}

/** Films of several gauges in rows, all at the same scale, and one apart below them. */
export function Picture({ picture, instance }: Props): ComponentChildren {
  const { rows, apart } = picture;
  const perMillimetre = Math.min(
    MOST_PER_MILLIMETRE,
    ...rows.map((row) => (PAGE_WIDTH - GAP * row.length) / Math.max(1, widthOf(row))),
  );
  const height = LENGTH_MILLIMETRES * perMillimetre;
  const rowHeight = SIGN + height + (LABEL_LINES + 0.6) * TEXT_HEIGHT;
  const rowsBottom = rows.length * rowHeight;
  const placed: readonly Placed[] = [
    ...rows.flatMap((row, index) => placeRow(row, index * rowHeight + SIGN, perMillimetre)),
    ...(apart === undefined ? [] : [placeApart(apart, rowsBottom + SIGN, perMillimetre)]),
  ];
  const bottom =
    apart === undefined
      ? rowsBottom + TEXT_HEIGHT
      : rowsBottom + SIGN + APART_LENGTH_MILLIMETRES * perMillimetre;
  return (
    <Drawing
      name={picture.name}
      alternative={picture.alternative}
      height={bottom + 2 * TEXT_HEIGHT}
    >
      <defs>
        <HatchPattern id={`${instance}-hatch`} />
        {placed.map(({ entry, left, top, lengthMillimetres }, index) => (
          <clipPath key={entry.label.join(' ')} id={`${instance}-strip-${index}`}>
            <rect
              x={at(left)}
              y={at(top)}
              width={at(entry.film.widthMillimetres * perMillimetre)}
              height={at(lengthMillimetres * perMillimetre)}
            />
          </clipPath>
        ))}
      </defs>
      {placed.map(({ entry, left, top, lengthMillimetres, ...label }, index) => (
        <g key={entry.label.join(' ')}>
          <Film
            film={entry.film}
            lengthMillimetres={lengthMillimetres}
            left={left}
            top={top}
            perMillimetre={perMillimetre}
            clipId={`${instance}-strip-${index}`}
            hatchId={`${instance}-hatch`}
          />
          {entry.label.map((line, place) => (
            <Label
              key={line}
              x={label.labelX}
              y={label.labelY + place * TEXT_HEIGHT}
              anchor={label.labelAnchor}
            >
              {line}
            </Label>
          ))}
          {entry.isMarked && (
            <Label
              x={left + (entry.film.widthMillimetres * perMillimetre) / 2}
              y={top - 8}
              anchor="middle"
              tone="strong"
            >
              ✓ fits
            </Label>
          )}
        </g>
      ))}
      <ScaleBar
        x={PAGE_WIDTH - 2 - SCALE_MILLIMETRES * perMillimetre}
        y={bottom}
        length={SCALE_MILLIMETRES * perMillimetre}
        text={`${SCALE_MILLIMETRES}\u00a0mm`}
      />
    </Drawing>
  );
}

function widthOf(row: readonly FilmBesideOthers[]): number {
  return row.reduce((sum, { film }) => sum + film.widthMillimetres, 0);
}

/** The film that stands apart, its label beside it. */
function placeApart(entry: FilmBesideOthers, top: number, perMillimetre: number): Placed {
  return {
    entry,
    left: GAP / 2,
    top,
    lengthMillimetres: APART_LENGTH_MILLIMETRES,
    labelX: GAP + entry.film.widthMillimetres * perMillimetre,
    labelY: top + (APART_LENGTH_MILLIMETRES * perMillimetre) / 2,
    labelAnchor: 'start',
  };
}

/** A row of strips with equal room around each. */
function placeRow(
  row: readonly FilmBesideOthers[],
  top: number,
  perMillimetre: number,
): readonly Placed[] {
  const gap = (PAGE_WIDTH - widthOf(row) * perMillimetre) / Math.max(1, row.length);
  return row.map((entry, index) => {
    const left = gap / 2 + index * gap + widthOf(row.slice(0, index)) * perMillimetre;
    return {
      entry,
      left,
      top,
      lengthMillimetres: LENGTH_MILLIMETRES,
      labelX: left + (entry.film.widthMillimetres * perMillimetre) / 2,
      labelY: top + LENGTH_MILLIMETRES * perMillimetre + TEXT_HEIGHT,
      labelAnchor: 'middle',
    };
  });
}
