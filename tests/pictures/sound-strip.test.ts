import { describe, expect, test } from 'vitest';
import { Picture } from '../../src/pictures/sound-strip.tsx';
import { draw, numberOf, texts } from './draw.ts';
import { soundStrip } from './samples.ts';

const left = (root: ReturnType<typeof draw>, selector: string): number =>
  numberOf(root.querySelector(selector), 'x');

describe('the sound strip', () => {
  const root = draw(Picture, soundStrip);
  const frames = root.querySelectorAll('rect.pic-image');
  const frame = numberOf(frames[1], 'x') - numberOf(frames[0], 'x');

  test('puts the sound as many frames along the film as it lies ahead', () => {
    const distance = left(root, 'rect.pic-sound') - left(root, 'rect.pic-gate');
    expect(distance / frame).toBeCloseTo(18, 1);
  });

  test('points at the gate and at the head that reads the sound', () => {
    const [gate, head] = root.querySelectorAll('circle.pic-head').map((dot) => numberOf(dot, 'cx'));
    expect(((head ?? 0) - (gate ?? 0)) / frame).toBeCloseTo(20, 1);
    expect(texts(root)).toEqual(expect.arrayContaining(['picture in the gate', 'sound head']));
  });

  test('measures the way to the sound and what lies between sound and head', () => {
    expect(texts(root)).toEqual(
      expect.arrayContaining(['to its sound: 18 frames = 1 s', 'sound 2 frames late']),
    );
  });

  test('says nothing of a gap where sound and head meet', () => {
    const met = draw(Picture, { ...soundStrip, readFrames: 18, gapText: '' });
    expect(texts(met).some((text) => text.includes('late'))).toBe(false);
    const axes = (page: ReturnType<typeof draw>): number =>
      page.querySelectorAll('line.pic-axis').length;
    expect(axes(root) - axes(met)).toBe(1);
  });

  test('shows a track that is read in the gate with the sound still ahead', () => {
    const read = draw(Picture, {
      ...soundStrip,
      separationFrames: 26,
      readFrames: 0,
      readText: 'sound is read here',
      gapText: 'sound 26 frames early',
    });
    const [gate, reader] = read
      .querySelectorAll('circle.pic-head')
      .map((dot) => numberOf(dot, 'cx'));
    expect(reader).toBe(gate);
    expect(left(read, 'rect.pic-sound')).toBeGreaterThan(left(read, 'rect.pic-gate'));
  });

  test('keeps every text on the page', () => {
    for (const label of root.querySelectorAll('text')) {
      const width = label.textContent.length * 12.6;
      const anchor = label.getAttribute('text-anchor');
      const x = numberOf(label, 'x');
      const from = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
      expect(from).toBeGreaterThanOrEqual(-1);
      expect(from + width).toBeLessThanOrEqual(641);
    }
  });
});
