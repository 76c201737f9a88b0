import type { PictureTurn } from '../../core/gate/picture-turn.ts';

/** How a picture as coded is drawn so that it stands the right way round. */
export interface Drawing {
  /** Clockwise turn that the file asks for, degrees. */
  readonly rotationDegrees: 0 | 90 | 180 | 270;
  /** What has to be undone besides. */
  readonly turn: PictureTurn;
}

/** Draws a picture into a canvas, which takes its size, and closes it. */
export function drawPicture(canvas: HTMLCanvasElement, bitmap: ImageBitmap, how: Drawing): void {
  const { rotationDegrees, turn } = how;
  const isOnItsSide = rotationDegrees % 180 !== 0;
  canvas.width = isOnItsSide ? bitmap.height : bitmap.width;
  canvas.height = isOnItsSide ? bitmap.width : bitmap.height;
  const context = canvas.getContext('2d');
  if (context !== null) {
    context.translate(canvas.width / 2, canvas.height / 2);
    context.scale(turn.isLeftRightChanged ? -1 : 1, turn.isUpsideDown ? -1 : 1);
    context.rotate((rotationDegrees * Math.PI) / 180);
    context.drawImage(bitmap, -bitmap.width / 2, -bitmap.height / 2);
  }
  bitmap.close();
}
