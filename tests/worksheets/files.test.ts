import { describe, expect, test } from 'vitest';
import { FRAME_LAYOUTS, type FrameLayoutName } from '../../src/core/file/frame-bytes.ts';
import { evaluate, fillEntries, type Evaluation } from '../../src/worksheets/machine/evaluate.ts';
import { worksheet as fileSize } from '../../src/worksheets/file/file-size/worksheet.ts';
import { frameSizeSum } from '../../src/worksheets/file/frame-size-sum.ts';
import { worksheet as mediaCount } from '../../src/worksheets/file/media-count/worksheet.ts';
import type { Worksheet } from '../../src/worksheets/machine/types.ts';

const run = (worksheet: Worksheet, entries: Record<string, string>): Evaluation =>
  evaluate(worksheet, fillEntries(worksheet.inputs, entries));
const value = (evaluation: Evaluation, key: string): number =>
  evaluation.outcome!.answers[key]!.value!;

/** Works out a printed sum such as `⌈1920 ÷ 48⌉ × 128 B × 1080`. */
function workedOut(sum: string): number {
  const plain = sum
    .replaceAll('B', '')
    .replace(/⌈(\d+) ÷ (\d+)⌉/u, (_all, top: string, bottom: string) =>
      String(Math.ceil(Number(top) / Number(bottom))),
    )
    .replace('(1 + 2 × ¼)', '1.5')
    .replace('(1 + 2 × ½)', '2');
  return plain
    .split('+')
    .map((term) => term.split('×').reduce((product, factor) => product * Number(factor), 1))
    .reduce((total, term) => total + term, 0);
}

describe('the worksheet on file size', () => {
  test('prints a sum for one frame that comes to its bytes', () => {
    const layouts = Object.keys(FRAME_LAYOUTS) as FrameLayoutName[];
    expect(layouts.length).toBeGreaterThan(5);
    for (const layout of layouts) {
      for (const [width, height] of [
        [1920, 1080],
        [720, 576],
        [1440, 1080],
      ] as const) {
        expect(workedOut(frameSizeSum(layout, width, height))).toBe(
          FRAME_LAYOUTS[layout].frameBytes(width, height),
        );
      }
    }
  });

  test('adds pictures and sound to the whole', () => {
    const evaluation = run(fileSize, { channels: '2', runningSeconds: '7 min' });
    expect(value(evaluation, 'pictureBytes') + value(evaluation, 'soundBytes')).toBe(
      value(evaluation, 'totalBytes'),
    );
  });

  test('takes a compressed file by its bit rate, whatever its pixels', () => {
    const entries = { layout: 'bit-rate', megabitsPerSecond: '40', runningSeconds: '1 h' };
    const small = run(fileSize, { ...entries, widthPixels: '640' });
    const large = run(fileSize, { ...entries, widthPixels: '4096' });
    expect(value(small, 'totalBytes')).toBeCloseTo(18e9, 0);
    expect(value(large, 'totalBytes')).toBe(value(small, 'totalBytes'));
  });

  test('gives an hour that is an hour', () => {
    const hour = run(fileSize, { runningSeconds: '1 h', channels: '2' });
    expect(value(hour, 'bytesPerHour')).toBeCloseTo(value(hour, 'totalBytes'), 0);
  });
});

describe('the worksheet on media', () => {
  test('asks for the capacity of a drive it does not know', () => {
    expect(run(mediaCount, { medium: 'other' }).messages).toHaveProperty('capacityBytes');
    expect(run(mediaCount, { medium: 'other', capacityBytes: '2 TB' }).messages).toEqual({});
  });

  test('never counts a tape faster than its own rate', () => {
    const slow = run(mediaCount, { medium: 'lto-6', writeRate: '160' });
    const fast = run(mediaCount, { medium: 'lto-6', writeRate: '1000' });
    expect(value(fast, 'writeSeconds')).toBe(value(slow, 'writeSeconds'));
    const disc = run(mediaCount, { medium: 'bd-25', writeRate: '1000' });
    expect(value(disc, 'writeSeconds')).toBeLessThan(value(fast, 'writeSeconds'));
  });

  test('reads every copy once more than it writes, with the originals', () => {
    const entries = { copies: '3', digestRate: '20000' };
    const evaluation = run(mediaCount, entries);
    expect(value(evaluation, 'checkSeconds') / value(evaluation, 'writeSeconds')).toBeCloseTo(
      4 / 3,
      9,
    );
  });

  test('asks for three sets from the start, and warns of fewer', () => {
    expect(run(mediaCount, {}).outcome!.verdict.sentence).toContain('3 copies');
    for (const copies of ['1', '2']) {
      const { verdict } = run(mediaCount, { copies }).outcome!;
      expect(verdict.level).toBe('care');
      expect(verdict.sentence).toContain(
        'Keep three sets in two places, one of them in another house',
      );
    }
    expect(run(mediaCount, { copies: '3' }).outcome!.verdict.level).toBe('note');
  });

  test('warns of a file that must be cut', () => {
    const cut = run(mediaCount, { medium: 'dvd-5', fileBytes: '5' });
    expect(cut.outcome!.verdict.sentence).toContain('cut');
  });
});
