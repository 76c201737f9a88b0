import { describe, expect, it } from 'vitest';
import { readGlossary } from '../content/read-content.ts';
import { makePage, readSiteFile } from './built-site.ts';

/** Words of the glossary that everybody uses, and names that stand on this page as everyday words. */
const EVERYDAY = new Set([
  'bands',
  'bars',
  'hole',
  'stop',
  'picture',
  'jump',
  'job',
  'reel',
  'camera',
  'leader',
  'head',
  'tail',
  'order',
  'core',
  'rim',
  'join',
  'copy to watch',
]);

/** Technical words that are in no glossary. */
const TECHNICAL = [
  'MP4',
  'H.264',
  'FFV1',
  'codec',
  'pixel',
  'bit',
  'byte',
  'Mbit',
  'GB',
  'Hz',
  'frame',
  'gate',
  'fps',
  'megapixel',
  'resolution',
  'format',
  'container',
  'metadata',
  'checksum',
  'exposure',
  'sensor',
  'workflow',
  'projector',
  'acetate',
  'nitrate',
  'polyester',
  'emulsion',
];

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`);

/** Words of the trade in a text, whole words and their plurals. */
function tradeWords(text: string): readonly string[] {
  const words = [
    ...readGlossary().flatMap(({ term, otherWords = [] }) => [term, ...otherWords]),
    ...TECHNICAL,
  ];
  return words.filter(
    (word) =>
      !EVERYDAY.has(word.toLowerCase()) &&
      new RegExp(String.raw`(?<![\p{L}\p{N}])${escaped(word)}(?:e?s)?(?![\p{L}\p{N}])`, 'iu').test(
        text,
      ),
  );
}

describe('the page for the owner of a film', () => {
  const page = makePage(
    'your-film/index.html',
    readSiteFile('your-film/index.html').toString('utf8'),
  );
  const main = page.root.querySelector('main');
  if (main === null) throw new Error('the page has no text');
  // The words of a drawing and the descriptions of pictures are read as well.
  const text = `${main.structuredText} ${main
    .querySelectorAll('[alt], [aria-label]')
    .map(
      (element) =>
        `${element.getAttribute('alt') ?? ''} ${element.getAttribute('aria-label') ?? ''}`,
    )
    .join(' ')}`;

  it('uses no word of the trade', () => {
    expect(tradeWords(text)).toEqual([]);
  });

  it('would find one', () => {
    expect(tradeWords('The pulldown claw hits each frame.')).toEqual(
      expect.arrayContaining(['claw', 'frame']),
    );
  });

  it('answers three questions first: what, how much, and is it safe', () => {
    const headings = main.querySelectorAll('h2').map(({ text: words }) => words.trim());
    expect(headings.slice(0, 3)).toEqual([
      'What do I get?',
      'What does it cost?',
      'Can it be harmed?',
    ]);
    // Each answer begins with itself.
    const answers = main.querySelectorAll('h2 + p > strong:first-child');
    expect(answers.length).toBeGreaterThanOrEqual(3);
  });
});
