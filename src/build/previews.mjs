import { mkdtemp, mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'node-html-parser';
import sharp from 'sharp';
import subsetFont from 'subset-font';

// The picture that another site shows beside a link to a chapter: its title, its question and the first
// drawing that stands in it.

const WIDTH = 1200;
const HEIGHT = 630;
const MARGIN = 64;
/** Where the drawing stands beside the words. */
const WORDS_WIDTH = 470;
const DRAWING = { left: 580, width: 560, height: 500 };
const FACE = 'Source Serif 4';

const local = (path) => fileURLToPath(new URL(path, import.meta.url));

/** The light colours, by token. */
function lightTokens(css) {
  const tokens = new Map();
  for (const [, name, value] of css.matchAll(/(--[\w-]+):\s*([^;]+);/g)) {
    // Later rules are for more contrast or for the reader's own colours.
    if (!tokens.has(name)) tokens.set(name, value.replace(/light-dark\(([^,]+),[^)]+\)/, '$1'));
  }
  return tokens;
}

/**
 * The styles of drawings for a renderer that knows neither tokens nor queries: on paper, in light.
 *
 * @param {string} drawings  text of pictures.css
 * @param {string} tokens  text of tokens.css
 * @throws {Error} names a token that is nowhere set
 */
export function flatStyles(drawings, tokens) {
  const values = lightTokens(`${tokens}${drawings}`);
  const plain = drawings
    .replaceAll(/\/\*.*?\*\//gs, '')
    .replaceAll(/@[\w-]+[^{}]*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}/g, '');
  const resolve = (text) =>
    text.replaceAll(/var\((--[\w-]+)\)/g, (_, name) => {
      const value = values.get(name);
      if (value === undefined) throw new Error(`${name} is not set`);
      return resolve(value);
    });
  return resolve(plain);
}

/** Makes the book's own faces known to the renderer, whatever faces the machine has. */
async function useBookFaces() {
  const folder = await mkdtemp(join(tmpdir(), 'book-faces-'));
  const faces = fileURLToPath(import.meta.resolve('@fontsource/source-serif-4/package.json'));
  const characters = Array.from({ length: 0x2c0 }, (_, code) => String.fromCodePoint(code + 32));
  const text = `${characters.join('')}–—‘’“”…•−×÷≈≤≥→`;
  for (const weight of [400, 600]) {
    const name = `source-serif-4-latin-${weight}-normal.woff2`;
    const face = await readFile(join(faces, '../files', name));
    const opened = await subsetFont(face, text, { targetFormat: 'truetype' });
    await writeFile(join(folder, `${weight}.ttf`), opened);
  }
  await writeFile(
    join(folder, 'fonts.conf'),
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${folder}</dir>` +
      `<include ignore_missing="yes">/etc/fonts/fonts.conf</include>` +
      `<cachedir>${join(folder, 'cache')}</cachedir></fontconfig>`,
  );
  process.env.FONTCONFIG_FILE = join(folder, 'fonts.conf');
}

const escaped = (text) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** A block of words, wrapped to a width. */
async function words(text, { size, colour, face = FACE, width }) {
  const markup = `<span foreground="${colour}">${escaped(text)}</span>`;
  const { data, info } = await sharp({
    text: {
      text: markup,
      font: `${face}, ${size}`,
      width,
      rgba: true,
      dpi: 72,
      spacing: Math.round(size / 9),
    },
  })
    .png()
    .toBuffer({ resolveWithObject: true });
  return { input: data, height: info.height };
}

/** A drawing of the book in its own colours, as large as its place allows. */
async function drawn(svg, styles) {
  const style = `<style>${styles} text { font-family: '${FACE}'; }</style>`;
  const whole = svg
    .replace('<svg', '<svg xmlns="http://www.w3.org/2000/svg"')
    .replace(/>/, `>${style}`);
  const { data, info } = await sharp(Buffer.from(whole), { density: 144 })
    .resize(DRAWING.width, DRAWING.height, { fit: 'inside' })
    .png()
    .toBuffer({ resolveWithObject: true });
  return { input: data, left: DRAWING.left, top: Math.round((HEIGHT - info.height) / 2) };
}

/** Draws the preview of one chapter. */
async function preview({ title, question, inShort, svg }, styles, tokens) {
  const width = svg === undefined ? WIDTH - 2 * MARGIN : WORDS_WIDTH;
  const ink = tokens.get('--ink');
  const soft = tokens.get('--ink-soft');
  const blocks = [
    { gap: 34, ...(await words('From Gate to File', { size: 26, colour: soft, width })) },
    {
      gap: 26,
      ...(await words(title, { size: 54, colour: ink, face: `${FACE} SemiBold`, width })),
    },
    { gap: 44, ...(await words(question, { size: 31, colour: soft, width })) },
  ];
  if (svg === undefined) {
    blocks.push({ gap: 0, ...(await words(inShort, { size: 31, colour: ink, width })) });
  }
  let top = MARGIN + 10;
  const placed = blocks.map(({ gap, height, input }) => {
    const at = { input, left: MARGIN, top };
    top += height + gap;
    return at;
  });
  const edge = { width: WIDTH, height: 12, channels: 3, background: tokens.get('--accent') };
  const ground = { width: WIDTH, height: HEIGHT, channels: 3, background: tokens.get('--paper') };
  return sharp({ create: ground })
    .composite([
      { input: { create: edge }, left: 0, top: 0 },
      ...(svg === undefined ? [] : [await drawn(svg, styles)]),
      ...placed.filter(({ top: at }) => at < HEIGHT - MARGIN),
    ])
    .png({ palette: true, colours: 64, compressionLevel: 9 })
    .toBuffer();
}

/** What a chapter's page says; nothing where the page is no chapter. */
function chapterOf(html) {
  const article = parse(html).querySelector('article.chapter');
  if (article === null) return undefined;
  const text = (selector) =>
    (article.querySelector(selector)?.text ?? '').replaceAll(/\s+/g, ' ').trim();
  return {
    title: text('h1'),
    question: text('.chapter-question'),
    inShort: text('.in-short li'),
    svg: article.querySelector('.prose svg.pic-svg')?.outerHTML,
  };
}

/**
 * Draws the preview picture of each chapter, `previews/<part>/<chapter>.png`, where the address of the
 * site is known: other sites find the picture by its whole address alone.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function previews() {
  let isPublished = false;
  return {
    name: 'previews',
    hooks: {
      'astro:config:done': ({ config }) => {
        isPublished = config.site !== undefined;
      },
      'astro:build:done': async ({ dir, logger }) => {
        if (!isPublished) return;
        const folder = fileURLToPath(dir);
        const tokensCss = await readFile(local('../styles/tokens.css'), 'utf8');
        const styles = flatStyles(
          await readFile(local('../styles/pictures.css'), 'utf8'),
          tokensCss,
        );
        const tokens = lightTokens(tokensCss);
        await useBookFaces();
        const names = (await readdir(folder, { recursive: true }))
          .map((name) => name.replaceAll('\\', '/'))
          .filter((name) => /^[\w-]+\/[\w-]+\/index\.html$/.test(name));
        let count = 0;
        for (const name of names) {
          const chapter = chapterOf(await readFile(join(folder, name), 'utf8'));
          if (chapter === undefined) continue;
          const file = join(folder, 'previews', name.replace('/index.html', '.png'));
          await mkdir(join(file, '..'), { recursive: true });
          await writeFile(file, await preview(chapter, styles, tokens));
          count += 1;
        }
        logger.info(`${count} chapters`);
      },
    },
  };
}
