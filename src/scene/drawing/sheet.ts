/** What the scene draws with: the part of a canvas context that browsers and the build share. */
export type Pen = Pick<
  CanvasRenderingContext2D,
  | keyof CanvasPath
  | keyof CanvasFillStrokeStyles
  | keyof CanvasCompositing
  | keyof CanvasPathDrawingStyles
  | keyof CanvasRect
  | keyof CanvasState
  | keyof CanvasTransform
  | 'beginPath'
  | 'clip'
  | 'drawImage'
  | 'fill'
  | 'getImageData'
  | 'stroke'
>;

/** A sheet of pixels with its pen. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly pen: Pen;
  /** The sheet itself, to be laid on another one. */
  readonly image: CanvasImageSource;
}

/**
 * Makes a sheet; the browser's worker, its page and the build each have their own way.
 *
 * @param isRead  true for a sheet whose pixels are read back often
 */
export type MakeSheet = (width: number, height: number, isRead: boolean) => Sheet;
