import { readFileSync } from 'node:fs';
import astro from 'eslint-plugin-astro';
import tseslint from 'typescript-eslint';

// Reads .astro files alone; ../.oxlintrc.json asks the same of TypeScript and JavaScript, and what needs to know
// types besides. Run from the project folder by npm run check:lint.

/** The rules that the other linter asks of every file, by their names here; its comments are not JSON. */
const { rules } = JSON.parse(
  readFileSync(new URL('../.oxlintrc.json', import.meta.url), 'utf8').replaceAll(
    /^\s*\/\/.*$/gmu,
    '',
  ),
);
const asked = Object.fromEntries(
  Object.entries(rules).map(([name, rule]) => [
    name.replace(/^typescript\//u, '@typescript-eslint/'),
    rule,
  ]),
);

const houseStyle = {
  'no-restricted-syntax': [
    'error',
    {
      selector: 'ExportAllDeclaration, ExportNamedDeclaration[source]',
      message: 'No barrels: import from the file that defines the name.',
    },
    {
      selector: 'JSXAttribute[name.name="style"]',
      message: 'No style= attribute: the content security policy forbids it.',
    },
    {
      selector: 'JSXAttribute[name.name="dangerouslySetInnerHTML"]',
      message: 'No raw HTML in views.',
    },
  ],
};

export default tseslint.config(
  // Nothing but .astro files and the scripts in them.
  { ignores: ['src/**/*.{js,mjs,ts,tsx}', '!src/**/*.astro/*'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  tseslint.configs.base,
  ...astro.configs.recommended,
  {
    rules: {
      ...asked,
      ...houseStyle,
      'astro/no-set-html-directive': 'error',
      'astro/no-unused-css-selector': 'error',
      'astro/no-unused-define-vars-in-style': 'error',
    },
  },
  {
    // HTML that the build itself made, from our own TeX and our own Markdown; no text of a reader
    // comes near it.
    files: ['src/components/Formula.astro', 'src/components/TableFrame.astro'],
    rules: { 'astro/no-set-html-directive': 'off' },
  },
);
