// The sum behind the bytes of one frame, with the reader's numbers, for each way of storing it.

import type { FrameLayoutName } from '../../core/file/frame-bytes.ts';

/** Colour sampling and bytes of a sample of the layouts that store sample by sample. */
const SAMPLE_SUMS: Readonly<
  Record<Exclude<FrameLayoutName, 'v210' | 'dpx'>, readonly [string, number]>
> = {
  '420-8': ['(1 + 2 × ¼)', 1],
  '422-8': ['(1 + 2 × ½)', 1],
  '422-10': ['(1 + 2 × ½)', 2],
  'rgb-8': ['3', 1],
  'rgb-16': ['3', 2],
};

/** `⌈1920 ÷ 48⌉ × 128 B × 1080`, and the like. Odd sizes round colour samples up. */
export function frameSizeSum(layout: FrameLayoutName, width: number, height: number): string {
  if (layout === 'v210') return `⌈${width} ÷ 48⌉ × 128 B × ${height}`;
  if (layout === 'dpx') return `2048 B + 4 B × ${width} × ${height}`;
  const [samples, bytes] = SAMPLE_SUMS[layout];
  return `${width} × ${height} × ${samples} × ${bytes} B`;
}
