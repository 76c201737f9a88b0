import katex from 'katex';

/**
 * A TeX formula as MathML, made at build: no script, no style attribute and no font reaches the page.
 *
 * @throws {katex.ParseError} for bad or merely doubtful TeX, so that it fails the build
 */
export function renderFormula(tex: string, display: boolean): string {
  return katex.renderToString(tex, {
    displayMode: display,
    output: 'mathml',
    throwOnError: true,
    strict: 'error',
  });
}
