import { keysOf, type Label, type LineDrawing } from './drawing.ts';
import { at, circle, line } from './marks.ts';

/** Names of the book's tokens that drawings use. */
const TOKENS = [
  'paper',
  'sheet',
  'ink',
  'ink-soft',
  'accent',
  'accent-soft',
  'light',
  'dark',
  'stop',
  'form-face',
];

const NAMED = new RegExp(`^\\s*--(?:${TOKENS.join('|')}): [^;]+;`, 'gmu');

/** The declarations of used tokens in the part of each style sheet from a mark to the next brace. */
function declared(tokenSheets: readonly string[], mark: string): string {
  return tokenSheets
    .flatMap((sheet) => {
      const from = sheet.indexOf(mark);
      if (from < 0) throw new RangeError(`the tokens have no “${mark}”`);
      return sheet.slice(from, sheet.indexOf('}', from)).match(NAMED) ?? [];
    })
    .map((each) => each.trim())
    .join('');
}

/** From here on the drawing is wide enough for its words; below, letters stand for them. */
const WORDS_FROM_PIXELS = 470;

const RULES = [
  '.o{fill:var(--paper);stroke:var(--ink);stroke-width:1.8;stroke-linejoin:round}',
  '.s{fill:var(--sheet);stroke:var(--ink);stroke-width:1.8;stroke-linejoin:round}',
  '.p{fill:var(--paper)}',
  '.t{fill:none;stroke:var(--ink);stroke-width:1.1;stroke-linecap:round;stroke-linejoin:round}',
  '.e{fill:none;stroke:var(--ink);stroke-width:1.8;stroke-linecap:round;stroke-linejoin:round}',
  '.k{fill:url(#hatch);stroke:var(--ink);stroke-width:2.2;stroke-linejoin:round}',
  '.h{stroke:var(--ink);stroke-width:.8}',
  '.f{fill:none;stroke:var(--accent);stroke-width:3.4;stroke-linejoin:round;stroke-linecap:round}',
  '.v{fill:none;stroke:var(--accent);stroke-width:2.4;stroke-dasharray:2 7;stroke-linecap:round}',
  '.z{fill:none;stroke:var(--ink);stroke-width:7;stroke-linejoin:round}',
  '.y{fill:none;stroke:var(--accent-soft);stroke-width:16;stroke-linecap:butt}',
  '.g{fill:none;stroke:var(--accent);stroke-width:.8}',
  '.b{fill:var(--accent-soft);stroke:var(--ink);stroke-width:1.5;stroke-linejoin:round}',
  '.m{fill:url(#dots);stroke:var(--ink);stroke-width:1.5;stroke-linejoin:round}',
  '.a{fill:var(--accent)}',
  '.d{fill:var(--ink)}',
  '.w{fill:var(--light)}',
  '.q{fill:none;stroke:var(--ink-soft);stroke-width:1;stroke-dasharray:14 4 2 4}',
  '.r{fill:none;stroke:var(--ink);stroke-width:1.1;stroke-dasharray:5 4}',
  '.x{fill:none;stroke:var(--stop);stroke-width:3;stroke-linecap:round}',
  '.n{fill:var(--dark)}',
  '.u{fill:var(--ink-soft)}',
  '.l{fill:none;stroke:var(--ink-soft);stroke-width:1}',
  '.i{fill:var(--ink-soft)}',
  'text{font-family:var(--form-face);font-size:18px;fill:var(--ink)}',
  '.note{font-size:16px;fill:var(--ink-soft)}',
  '.sign{font-size:30px;font-weight:600}',
  '.big{font-size:44px}',
  '.film{fill:var(--accent)}',
  '.key{font-size:30px;font-weight:600}',
  '.ring{fill:var(--paper);stroke:var(--ink-soft);stroke-width:1.4}',
  '.narrow{display:none}',
  `@media (max-width:${WORDS_FROM_PIXELS - 1}px){.wide{display:none}.narrow{display:inline}}`,
].join('');

const PATTERNS =
  '<defs><pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">' +
  '<rect class="p" width="6" height="6"/><path class="h" d="M0 0v6"/></pattern>' +
  '<pattern id="dots" width="5" height="5" patternUnits="userSpaceOnUse"><rect class="p" width="5" height="5"/>' +
  '<circle class="a" cx="1.3" cy="1.3" r="1"/><circle class="a" cx="3.8" cy="3.8" r="1"/></pattern></defs>';

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** Room between the end of a leader and the words. */
const GAP = 7;
const LINE = 20;
const KEY_RADIUS = 21;

/** Where the words of a label stand from the end of its leader. */
function wordsOf(label: Label): string {
  const { x, y, anchor = 'start', to } = label;
  const text = label.step === undefined ? label.text : `${label.step}\u2002${label.text}`;
  const shift = to === undefined || anchor === 'middle' ? 0 : anchor === 'start' ? GAP : -GAP;
  const isBelow = to !== undefined && y > to.y;
  const lines = label.note === undefined ? 1 : 2;
  // Above a thing the last line stands next to the leader, below it the first.
  const drop =
    anchor === 'middle' && to !== undefined ? (isBelow ? 19 : -7 - LINE * (lines - 1)) : 6;
  const write = (words: string, style: string, row: number): string =>
    `<text${style} x="${at(x + shift)}" y="${at(y + drop + row * LINE)}"` +
    `${anchor === 'start' ? '' : ` text-anchor="${anchor}"`}>${escaped(words)}</text>`;
  return (
    write(text, '', 0) + (label.note === undefined ? '' : write(label.note, ' class="note"', 1))
  );
}

function keyOf(label: Label, key: string): string {
  const { x, y, anchor = 'start', to } = label;
  const side = anchor === 'start' ? 1 : anchor === 'end' ? -1 : 0;
  const rise = side !== 0 || to === undefined ? 0 : y > to.y ? 1 : -1;
  const [centreX, centreY] = [x + side * KEY_RADIUS, y + rise * KEY_RADIUS];
  return `${circle(
    'ring',
    centreX,
    centreY,
    KEY_RADIUS,
  )}<text class="key" x="${at(centreX)}" y="${at(centreY + 10)}" text-anchor="middle">${key}</text>`;
}

const leaderOf = ({ x, y, to }: Label): string =>
  to === undefined ? '' : line('l', to.x, to.y, x, y) + circle('i', to.x, to.y, 3);

/**
 * The drawing as a file of its own. It follows the colours of the page it stands in, and shows letters
 * instead of words where it is narrow.
 *
 * @param tokenSheets  texts of the style sheets of tokens: the book's, and the drawings' own
 */
export function renderDrawing(drawing: LineDrawing, tokenSheets: readonly string[]): string {
  const { title, description, left, width, height, marks, labels } = drawing;
  const keys = keysOf(labels);
  const style =
    `:root{color-scheme:light dark;${declared(tokenSheets, ':root {')}}` +
    `@media (prefers-contrast:more){:root{${declared(tokenSheets, '(prefers-contrast: more)')}}}` +
    `@media (forced-colors:active){:root{${declared(tokenSheets, '(forced-colors: active)')}}}${RULES}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${left} 0 ${width} ${height}" role="img" aria-labelledby="title description">` +
    `<title id="title">${escaped(title)}</title><desc id="description">${escaped(description)}</desc>` +
    `<style>${style}</style>${PATTERNS}<rect class="p" x="${left}" width="${width}" height="${height}"/>` +
    `<g class="marks">${marks.join('')}</g><g class="leaders">${labels.map(leaderOf).join('')}</g>` +
    `<g class="wide">${labels.map(wordsOf).join('')}</g>` +
    `<g class="narrow">${labels.map((label, index) => keyOf(label, keys[index] ?? '')).join('')}</g></svg>\n`
  );
}
