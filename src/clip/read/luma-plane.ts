/** Rows of luma of one picture, as the decoder laid them out. */
export interface LumaPlane {
  /** One entry a sample: bytes, or words of 16 bits where the picture has more than 8. */
  readonly samples: Uint8Array | Uint16Array;
  /** Entry of the first sample. */
  readonly offset: number;
  /** Entries from one row to the next. */
  readonly stride: number;
  readonly width: number;
  readonly height: number;
}

/** Bits of a sample by the decoder’s name of the layout; undefined for layouts without a plane of luma. */
export function lumaBitDepth(format: string | null): number | undefined {
  if (format === 'NV12') return 8;
  const match = /^I4(?:20|22|44)A?(?:P(10|12))?$/u.exec(format ?? '');
  return match === null ? undefined : Number(match[1] ?? 8);
}

/** Which rows and columns are looked at: about 270 rows and 960 columns are plenty for means. */
export function samplingSteps(width: number, height: number): { columns: number; rows: number } {
  return {
    columns: Math.max(1, Math.floor(width / 960)),
    rows: Math.max(1, Math.floor(height / 270)),
  };
}

/**
 * Counts the codes in each of some bands of rows, the first band made of the first rows.
 *
 * @param counts  bands × codes, added to
 * @param codes  number of codes; a sample beyond them counts as the last
 */
export function countBandCodes(
  plane: LumaPlane,
  bands: number,
  counts: Uint32Array,
  codes: number,
): void {
  const { samples, offset, stride, width, height } = plane;
  const step = samplingSteps(width, height);
  const last = codes - 1;
  for (let band = 0; band < bands; band += 1) {
    const base = band * codes;
    const end = Math.floor(((band + 1) * height) / bands);
    for (let row = Math.floor((band * height) / bands); row < end; row += step.rows) {
      const begin = offset + row * stride;
      for (let at = begin; at < begin + width; at += step.columns) {
        const code = samples[at] ?? 0;
        const place = base + (code < last ? code : last);
        counts[place] = (counts[place] ?? 0) + 1;
      }
    }
  }
}

/**
 * Means of a picture over columns × rows boxes, row by row.
 *
 * @param levels  signal level of each code
 * @param into  columns × rows, overwritten
 */
export function boxMeans(
  plane: LumaPlane,
  columns: number,
  rows: number,
  levels: Float64Array,
  into: Float64Array,
): void {
  const { samples, offset, stride, width, height } = plane;
  const step = samplingSteps(width, height);
  for (let boxRow = 0; boxRow < rows; boxRow += 1) {
    const rowEnd = Math.floor(((boxRow + 1) * height) / rows);
    const rowBegin = Math.floor((boxRow * height) / rows);
    for (let box = 0; box < columns; box += 1) {
      const from = Math.floor((box * width) / columns);
      const to = Math.max(from + 1, Math.floor(((box + 1) * width) / columns));
      let sum = 0;
      let count = 0;
      for (let row = rowBegin; row < Math.max(rowBegin + 1, rowEnd); row += step.rows) {
        const line = offset + row * stride;
        for (let at = line + from; at < line + to; at += step.columns) {
          sum += levels[samples[at] ?? 0] ?? 1;
          count += 1;
        }
      }
      into[boxRow * columns + box] = sum / count;
    }
  }
}
