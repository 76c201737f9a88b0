import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { readPages, readSiteFile } from './built-site.ts';

const pages = readPages();
const rootOf = (address: string) => pages.find((page) => page.address === address)!.root;
const entries = rootOf('/faults/').querySelectorAll('.fault');

/** Weight that a still of 320 pixels may have, bytes. */
const MOST_BYTES = 7000;
/** Mean difference of code values that an eye sees at once, over the worst hundredth of the blocks. */
const SEEN = 12;

/** Code values of a still in blocks of 8 × 8 pixels. */
async function blocksOf(address: string): Promise<Buffer> {
  return await sharp(readSiteFile(address.slice(1)))
    .resize(40, 30, { kernel: 'cubic', fit: 'fill' })
    .removeAlpha()
    .raw()
    .toBuffer();
}

/** How far two stills differ where they differ most: the mean of the worst hundredth, code values. */
async function difference(first: string, second: string): Promise<number> {
  const [a, b] = await Promise.all([blocksOf(first), blocksOf(second)]);
  const apart = [...a].map((code, at) => Math.abs(code - (b[at] ?? 0))).sort((x, y) => y - x);
  const worst = apart.slice(0, Math.ceil(apart.length / 100));
  return worst.reduce((sum, each) => sum + each, 0) / worst.length;
}

describe('the dictionary of faults', () => {
  it('has at least 28 entries, each found from its index', () => {
    expect(entries.length).toBeGreaterThanOrEqual(28);
    const indexed = rootOf('/faults/')
      .querySelectorAll('.fault-index li a')
      .map((link) => link.getAttribute('href'));
    expect(indexed).toEqual(entries.map(({ id }) => `#${id}`));
  });

  it.each(entries.map((entry) => ({ id: entry.id, entry })))(
    '$id has two light pictures that differ, a cause, three steps and help',
    async ({ id, entry }) => {
      const images = entry.querySelectorAll('img');
      expect(images).toHaveLength(2);
      const stills = images.map((image) => image.getAttribute('src')!);
      for (const [at, still] of stills.entries()) {
        expect(images[at]!.getAttribute('loading')).toBe('lazy');
        expect(images[at]!.getAttribute('alt')).toMatch(/.{12,}\.$/u);
        expect(readSiteFile(still.slice(1)).length).toBeLessThanOrEqual(MOST_BYTES);
      }
      // Lost pictures show in numbers and in motion: neighbours on film are too much alike.
      if (id !== 'lost-and-doubled') {
        expect(await difference(stills[0]!, stills[1]!)).toBeGreaterThan(SEEN);
      }
      expect(entry.querySelectorAll('ol > li')).toHaveLength(3);
      expect(entry.querySelector('.fault-help a')?.getAttribute('href')).toMatch(/^\/.+#/u);
    },
  );

  it('tells in numbers what the eye does not: lost pictures, speed and mixed pictures', () => {
    const numbersOf = (id: string): readonly string[] =>
      entries
        .find((entry) => entry.id === id)!
        .querySelectorAll('figcaption')
        .map((caption) => caption.text);
    const framesOf = (words: string): readonly number[] => (words.match(/\d+/gu) ?? []).map(Number);
    const [lost, all] = numbersOf('lost-and-doubled').map(framesOf);
    const steps = (frames: readonly number[]) =>
      frames.slice(1).map((frame, at) => frame - frames[at]!);
    expect(steps(all!).every((step) => step === 1)).toBe(true);
    expect(steps(lost!)).toContain(0);
    expect(steps(lost!)).toContain(2);
    // After one second a file of 25 film frames each second is 7 film frames ahead of one of 18.
    const [fast, own] = numbersOf('too-fast').map((words) => framesOf(words)[1]!);
    expect(fast! - own!).toBe(25 - 18);
    const [slow] = numbersOf('too-slow').map((words) => framesOf(words)[1]!);
    expect(slow! - own!).toBe(12 - 18);
    expect(numbersOf('ghost')[0]).toMatch(/\d+ \(\d+\s%\) \+ \d+ \(\d+\s%\)/u);
    expect(numbersOf('ghost')[1]).toMatch(/whole/u);
    expect(numbersOf('three-in-one')[0]!.match(/\+/gu)!.length).toBeGreaterThanOrEqual(2);
    expect(numbersOf('pulsing')[1]).toMatch(/alike in light/u);
  });
});

describe('“What do you see?” on the front page', () => {
  it('leads to a picture from every line but that on film which is never run', () => {
    const lines = rootOf('/').querySelectorAll('.front-troubles dl > div');
    expect(lines.length).toBeGreaterThanOrEqual(11);
    const ids = entries.map(({ id }) => id);
    const without = lines.filter((line) => {
      const href = line.querySelector('dt a')?.getAttribute('href') ?? '';
      return !ids.some((id) => href === `/faults/#${id}`);
    });
    expect(without.map((line) => line.querySelector('dd a')?.getAttribute('href'))).toEqual([
      '/reel/safety/#nitrate',
    ]);
  });
});
