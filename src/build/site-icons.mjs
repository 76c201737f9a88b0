import { readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const GROUND = '#0b4f5c';

async function drawn(svg, pixels) {
  // Rendered at its final size: 32 units of the drawing at 72 dots per inch.
  return sharp(svg, { density: (72 * pixels) / 32 })
    .resize(pixels, pixels)
    .png()
    .toBuffer();
}

/** The icon with room around it, for systems that cut icons to their own shape. */
async function padded(svg, pixels) {
  const icon = await drawn(svg, Math.round(pixels * 0.68));
  const ground = { width: pixels, height: pixels, channels: 3, background: GROUND };
  return sharp({ create: ground })
    .composite([{ input: icon }])
    .png()
    .toBuffer();
}

/**
 * Draws the icons of the installed book from icon.svg.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function siteIcons() {
  return {
    name: 'site-icons',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const folder = fileURLToPath(dir);
        const svg = await readFile(`${folder}icon.svg`);
        await writeFile(`${folder}icon-192.png`, await drawn(svg, 192));
        await writeFile(`${folder}icon-512.png`, await drawn(svg, 512));
        await writeFile(`${folder}icon-padded-512.png`, await padded(svg, 512));
        await writeFile(`${folder}apple-touch-icon.png`, await padded(svg, 180));
      },
    },
  };
}
