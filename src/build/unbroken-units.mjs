import { readFile, readdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { NodeType, parse } from 'node-html-parser';

/** A unit with a slash, after which some engines end a line: frames/s, mg/m³, rev/min. */
const UNIT =
  /(?<![\p{L}\p{N}/.:_-])[\p{L}²³]+\/(?:s|min|h|mm²?|cm|m³|in|ft|mL)(?![\p{L}\p{N}/_²³-])/gu;
/**
 * Where nothing is wrapped: what is no running text, what stays on one line anyhow, and what a script
 * brings to life, which must find the page as it would draw it.
 */
const LEFT_ALONE =
  'head, script, style, svg, math, pre, code, option, textarea, .unbroken, .value:not(.value-words), worksheet-form, practice-sheet, mixed-practice, bench-form, box-form, [data-plan], [data-cards-tools], [data-search]';

/**
 * Puts each unit with a slash into an element that no line breaks.
 *
 * @param {string} html  a whole page, or a part of one
 * @returns {string} the same with spans around units; nothing else is changed
 */
export function keepUnitsWhole(html) {
  const root = parse(html, { blockTextElements: { script: true, style: true, pre: false } });
  const alone = new Set(root.querySelectorAll(LEFT_ALONE));
  const texts = [];
  const collect = (element) => {
    for (const child of element.childNodes) {
      if (child.nodeType === NodeType.TEXT_NODE) texts.push(child.range);
      else if (child.nodeType === NodeType.ELEMENT_NODE && !alone.has(child)) collect(child);
    }
  };
  collect(root);
  let whole = '';
  let end = 0;
  for (const [from, to] of texts) {
    whole += html.slice(end, from);
    whole += html
      .slice(from, to)
      .replaceAll(UNIT, (unit) => `<span class="unbroken">${unit}</span>`);
    end = to;
  }
  return whole + html.slice(end);
}

/**
 * Keeps units whole on every page, whether a chapter, a component or a table wrote them.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function unbrokenUnits() {
  return {
    name: 'unbroken-units',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const folder = fileURLToPath(dir);
        for (const name of await readdir(folder, { recursive: true })) {
          if (!name.endsWith('.html')) continue;
          const html = await readFile(`${folder}${name}`, 'utf8');
          await writeFile(`${folder}${name}`, keepUnitsWhole(html));
        }
      },
    },
  };
}
