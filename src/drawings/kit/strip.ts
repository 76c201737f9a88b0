import { at, path, rect, shape } from './marks.ts';

/** Film from its face, along the sheet: first frame on the left or top. */
export interface Strip {
  readonly x: number;
  readonly y: number;
  /** Length of one frame along the film, units. */
  readonly step: number;
  readonly frames: number;
  readonly width: number;
  /** Along the sheet, or upright as in the gate. */
  readonly lies: 'across' | 'upright';
  /** Where the holes are, counted over the film: on the far side (top, or left), both, or the middle. */
  readonly holes: 'far' | 'near' | 'both' | 'centre' | 'none';
  /** Holes at the line between frames, or at the middle of each. */
  readonly holesAt: 'line' | 'middle';
  /** Leave pictures out: clear film. */
  readonly isBlank?: boolean;
}

const HOLE = { along: 13, over: 16, margin: 7 } as const;

/** A rectangle given along and over the film, as it lies on the sheet. */
export function onStrip(
  strip: Strip,
  style: string,
  along: number,
  over: number,
  length: number,
  breadth: number,
  corner = 0,
): string {
  const { x, y, lies } = strip;
  return lies === 'across'
    ? rect(style, x + along, y + over, length, breadth, corner)
    : rect(style, x + over, y + along, breadth, length, corner);
}

function holeRows({ holes, width }: Strip): readonly number[] {
  const far = HOLE.margin;
  const near = width - HOLE.margin - HOLE.over;
  if (holes === 'both') return [far, near];
  if (holes === 'centre') return [(width - HOLE.over) / 2];
  return holes === 'none' ? [] : [holes === 'far' ? far : near];
}

/** Where the middle of each hole lies along the film. */
export function holePlaces({ frames, step, holesAt }: Strip): readonly number[] {
  return holesAt === 'line'
    ? Array.from({ length: frames - 1 }, (_, index) => (index + 1) * step)
    : Array.from({ length: frames }, (_, index) => (index + 0.5) * step);
}

const holeIn = (strip: Strip, along: number, row: number): string =>
  onStrip(strip, 'o', along - HOLE.along / 2, row, HOLE.along, HOLE.over, 3);

/** The strip with its holes and pictures; `without` names holes that are left out, from 0. */
export function stripMark(strip: Strip, without: readonly number[] = []): string {
  const { step, frames, width, holes, isBlank } = strip;
  const left = holes === 'far' || holes === 'both' ? HOLE.margin + HOLE.over + 7 : 8;
  const right = holes === 'near' || holes === 'both' ? HOLE.margin + HOLE.over + 7 : 8;
  const pictures = isBlank
    ? []
    : Array.from({ length: frames }, (_, index) =>
        onStrip(strip, 'm', index * step + 5, left, step - 10, width - left - right, 2),
      );
  const rows = holeRows(strip);
  const places = holePlaces(strip).filter((_, index) => !without.includes(index));
  return [
    onStrip(strip, 'b', 0, 0, step * frames, width),
    ...pictures,
    ...places.flatMap((along) => rows.map((row) => holeIn(strip, along, row))),
  ].join('');
}

/** A person standing, feet at a place; −1 hangs upside down. */
export function personMark(x: number, feet: number, height: number, way: 1 | -1 = 1): string {
  const up = -way * height;
  return `<circle class="d" cx="${at(x)}" cy="${at(feet + up * 0.86)}" r="${at(height * 0.13)}"/>${path(
    'e',
    `M${at(x)} ${at(feet + up * 0.72)}V${at(feet + up * 0.36)}M${at(x - height * 0.24)} ${at(feet + up * 0.6)}H${at(x + height * 0.24)}` +
      `M${at(x - height * 0.18)} ${at(feet)}L${at(x)} ${at(feet + up * 0.36)}L${at(x + height * 0.18)} ${at(feet)}`,
  )}`;
}

/** A torn edge across a strip. */
export const tornMark = (style: string, x: number, top: number, bottom: number): string => {
  const part = (bottom - top) / 5;
  return path(
    style,
    `M${at(x)} ${at(top)}l5 ${at(part)}l-9 ${at(part)}l8 ${at(part)}l-7 ${at(part)}l4 ${at(part)}`,
  );
};

/** A triangle that points at a place from a side. */
export const pointer = (x: number, y: number, side: 'above' | 'below'): string => {
  const way = side === 'above' ? -1 : 1;
  return shape('d', x, y, x - 7, y + way * 14, x + 7, y + way * 14);
};
