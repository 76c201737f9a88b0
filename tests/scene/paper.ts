import { createCanvas } from '@napi-rs/canvas';
import type { MakeSheet, Pen } from '../../src/scene/drawing/sheet.ts';

/** Sheets of the canvas that draws without a browser. */
export const makePaper: MakeSheet = (width, height) => {
  const canvas = createCanvas(width, height);
  return {
    width,
    height,
    pen: canvas.getContext('2d') as unknown as Pen,
    image: canvas as unknown as CanvasImageSource,
  };
};
