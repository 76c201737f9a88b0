import { createCanvas } from '@napi-rs/canvas';
import { copyFile, mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'node-html-parser';
import sharp from 'sharp';
import { underLoupe } from '../scene/loupe-still.ts';
import { makeStills } from '../scene/still.ts';

// The stills of scenes: what a page shows before a scene is touched, without scripts and on paper.

/** Widths, pixels, and the most that a still of that width may weigh, bytes. */
const SIZES = [
  { width: 640, mostBytes: 16_000 },
  { width: 320, mostBytes: 7_000 },
];
/** From the best downwards, until a still is light enough. */
const QUALITIES = [60, 52, 45, 38, 32, 26, 20];

/** A canvas that draws without a browser, as a sheet of the scene. */
export function makePaper(width, height) {
  const canvas = createCanvas(width, height);
  return { width, height, pen: canvas.getContext('2d'), image: canvas };
}

/** A still as a WebP that is no heavier than allowed; the best that is light enough. */
export async function encoded(pixels, { width, mostBytes }) {
  const height = (width * 3) / 4;
  const raw = { raw: { width, height, channels: 4 } };
  const bytes = Buffer.from(pixels.buffer);
  for (const quality of QUALITIES) {
    const image = await sharp(bytes, raw).removeAlpha().webp({ quality, effort: 6 }).toBuffer();
    if (image.length <= mostBytes) return image;
  }
  throw new Error(`a still of ${width} pixels is heavier than ${mostBytes} bytes at any quality`);
}

/** Every scene of the built pages, by the name of its still, with the widths that are shown. */
async function scenesIn(folder) {
  const scenes = new Map();
  for (const name of await readdir(folder, { recursive: true })) {
    if (!name.endsWith('.html')) continue;
    const html = await readFile(join(folder, name), 'utf8');
    if (!html.includes('data-still')) continue;
    for (const element of parse(html).querySelectorAll('[data-still]')) {
      const name = element.getAttribute('data-still');
      const widths = (element.getAttribute('data-widths') ?? '640 320').split(' ').map(Number);
      const known = scenes.get(name)?.widths ?? [];
      scenes.set(name, {
        scene: JSON.parse(element.getAttribute('data-scene')),
        widths: [...new Set([...known, ...widths])],
      });
    }
  }
  return scenes;
}

/** Draws stills of one width; what is seen under the loupe is a part of the widest. */
export function stillsOf(width) {
  const { width: widest } = SIZES[0];
  const draw = makeStills(makePaper, width);
  const drawWidest = makeStills(makePaper, widest);
  return (scene) =>
    scene.starts === 'loupe'
      ? underLoupe(drawWidest(scene), widest, width, scene.loupeAt)
      : draw(scene);
}

/**
 * Draws the stills that the pages ask for, `scenes/<name>-<width>.webp`.
 *
 * @param {string} [drawnBefore]  folder of a site that was built from the same sources for another place: its
 *   stills are taken instead of drawn again
 * @returns {import('astro').AstroIntegration}
 * @throws {Error} where that site lacks a still
 */
export function sceneStills(drawnBefore) {
  return {
    name: 'scene-stills',
    hooks: {
      // While the book is written: each still is drawn when a page asks for it, and carries its scene.
      'astro:server:setup': ({ server }) => {
        const drawers = new Map();
        server.middlewares.use('/scenes', (request, response, next) => {
          const { pathname, searchParams } = new URL(request.url, 'http://localhost');
          const size = SIZES.find(({ width }) => pathname.endsWith(`-${width}.webp`));
          const scene = searchParams.get('scene');
          if (size === undefined || scene === null) {
            next();
            return;
          }
          const draw = drawers.get(size.width) ?? stillsOf(size.width);
          drawers.set(size.width, draw);
          encoded(draw(JSON.parse(scene)), size).then((image) => {
            response.setHeader('content-type', 'image/webp');
            response.end(image);
          }, next);
        });
      },
      'astro:build:done': async ({ dir, logger }) => {
        const folder = fileURLToPath(dir);
        const scenes = await scenesIn(folder);
        await mkdir(join(folder, 'scenes'), { recursive: true });
        for (const size of SIZES) {
          const draw = stillsOf(size.width);
          for (const [name, { scene, widths }] of scenes) {
            if (!widths.includes(size.width)) continue;
            const file = join('scenes', `${name}-${size.width}.webp`);
            if (drawnBefore === undefined) {
              await writeFile(join(folder, file), await encoded(draw(scene), size));
            } else {
              await copyFile(join(drawnBefore, file), join(folder, file));
            }
          }
        }
        logger.info(`${scenes.size} scenes`);
      },
    },
  };
}
