import type { FilmPath, Turn, Wheel } from './film-path.ts';
import type { Point } from './point.ts';

/** A name in a drawing. */
export interface Label {
  readonly text: string;
  /** What it does: a second, softer line. */
  readonly note?: string;
  /** Term of the glossary that explains it. */
  readonly term?: string;
  /** Where the words start, end or have their middle; a leader comes from here. */
  readonly x: number;
  readonly y: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** The place that is named: a leader runs to it and ends in a dot. */
  readonly to?: Point;
  /** Number of a step, which stands in both sizes of the drawing. */
  readonly step?: number;
}

/** An arrow beside a wheel, which says how it turns. */
export interface TurnArrow {
  readonly centre: Point;
  readonly radius: number;
  readonly fromAngle: number;
  readonly sweep: number;
  readonly turn: Turn;
}

/** An arrow head on the film. */
export interface RunArrow {
  readonly place: Point;
  readonly run: Point;
}

/** Film seen from its face, which no name may cover. */
export interface FilmArea {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A ray that a mirror turns. */
export interface Reflection {
  readonly from: Point;
  readonly at: Point;
  readonly to: Point;
  /** Direction along the mirror. */
  readonly mirror: Point;
}

/** A line drawing of the work: what is drawn, and what a test can ask of it. */
export interface LineDrawing {
  readonly id: string;
  readonly title: string;
  /** What is to be seen, for a reader who does not see it. */
  readonly description: string;
  /** Left edge of the sheet in units of the drawing. */
  readonly left: number;
  readonly width: number;
  readonly height: number;
  /** Marks from back to front. */
  readonly marks: readonly string[];
  readonly paths: readonly FilmPath[];
  readonly wheels: readonly Wheel[];
  readonly turnArrows: readonly TurnArrow[];
  readonly runArrows: readonly RunArrow[];
  readonly areas: readonly FilmArea[];
  readonly reflections: readonly Reflection[];
  readonly labels: readonly Label[];
}

type Optional =
  | 'left'
  | 'width'
  | 'paths'
  | 'wheels'
  | 'turnArrows'
  | 'runArrows'
  | 'areas'
  | 'reflections';

/** Width of a sheet, in units of the drawing. */
export const SHEET_WIDTH = 680;

/** A drawing with what it does not have left empty. */
export const lineDrawing = (
  parts: Omit<LineDrawing, Optional> & Partial<Pick<LineDrawing, Optional>>,
): LineDrawing => ({
  left: 0,
  width: SHEET_WIDTH,
  paths: [],
  wheels: [],
  turnArrows: [],
  runArrows: [],
  areas: [],
  reflections: [],
  ...parts,
});

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** A letter or number for each name, in order: what stands in the drawing on a narrow screen. */
export function keysOf(labels: readonly Label[]): readonly string[] {
  const lettered = labels.filter(({ step }) => step === undefined);
  return labels.map((label) =>
    label.step === undefined ? (LETTERS[lettered.indexOf(label)] ?? '?') : String(label.step),
  );
}
