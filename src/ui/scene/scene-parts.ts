import type { View } from '../../scene/camera/views.ts';
import type { SceneData } from '../../scene/scene-data.ts';
import type { Painted } from './painter.ts';

/** What is chosen to be shown. */
export interface Chosen {
  view: View;
  /** Time on the reel, s. */
  seconds: number;
  isStrips: boolean;
  /** Place of the divider, share of the width. */
  split: number;
}

/** What a reader moves the scene with; it comes when it is asked for. */
export interface Panel {
  toggle(): void;
  /** Says what is chosen, and has it painted. */
  say(): void;
  /** A picture stands on the canvas. */
  painted(): void;
  /** Other sides are shown from now on. */
  changed(): void;
}

/** A scene that is alive. */
export interface LiveScene {
  readonly element: HTMLElement;
  readonly picture: HTMLElement;
  readonly canvas: HTMLCanvasElement;
  readonly data: SceneData;
  readonly chosen: Chosen;
  readonly sides: readonly Painted[];
  /** Paints what is chosen; as soon as its film frames are there. */
  paint(contrasts?: readonly number[]): void;
  /** Paints it again from what it keeps. */
  redraw(): void;
  /** Changes what it shows: the settings of a front page, say. */
  show(data: SceneData): void;
  /** Fetches the panel, once. */
  panel(): Promise<Panel>;
}

/** A part of the markup that the component made. */
export function partOf<Part extends HTMLElement>(element: HTMLElement, part: string): Part {
  const found = element.querySelector<Part>(`[data-part="${part}"]`);
  if (found === null) throw new Error(`a scene without ${part}`);
  return found;
}
