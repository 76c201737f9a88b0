import astro from 'eslint-plugin-astro';
import tseslint from 'typescript-eslint';

// Reads .astro files alone; ../.oxlintrc.json asks the same of TypeScript and JavaScript, and what needs to know
// types besides. Run from the project folder by npm run check:lint.

/** Core rules that catch mistakes the compiler lets through. */
const mistakes = {
  'array-callback-return': 'error',
  'constructor-super': 'error',
  'default-case-last': 'error',
  eqeqeq: 'error',
  'for-direction': 'error',
  'no-async-promise-executor': 'error',
  'no-case-declarations': 'error',
  'no-compare-neg-zero': 'error',
  'no-cond-assign': 'error',
  'no-console': 'error',
  'no-constant-binary-expression': 'error',
  'no-constant-condition': 'error',
  'no-control-regex': 'error',
  'no-debugger': 'error',
  'no-dupe-else-if': 'error',
  'no-duplicate-case': 'error',
  'no-else-return': 'error',
  'no-empty': 'error',
  'no-empty-character-class': 'error',
  'no-empty-pattern': 'error',
  'no-eval': 'error',
  'no-fallthrough': 'error',
  'no-implicit-coercion': ['error', { boolean: false }],
  'no-implied-eval': 'error',
  'no-irregular-whitespace': 'error',
  'no-lone-blocks': 'error',
  'no-loss-of-precision': 'error',
  'no-misleading-character-class': 'error',
  'no-new-func': 'error',
  'no-param-reassign': 'error',
  'no-promise-executor-return': 'error',
  'no-prototype-builtins': 'error',
  'no-self-compare': 'error',
  'no-sparse-arrays': 'error',
  'no-template-curly-in-string': 'error',
  'no-unmodified-loop-condition': 'error',
  'no-unreachable-loop': 'error',
  'no-unsafe-finally': 'error',
  'no-unsafe-optional-chaining': 'error',
  'no-useless-backreference': 'error',
  'no-useless-catch': 'error',
  'no-useless-escape': 'error',
  'no-var': 'error',
  'object-shorthand': 'error',
  'prefer-const': 'error',
  'prefer-regex-literals': 'error',
  'prefer-template': 'error',
  'require-yield': 'error',
  'use-isnan': 'error',
  'valid-typeof': 'error',
};

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
  ...tseslint.configs.strict,
  ...tseslint.configs.stylistic,
  ...astro.configs.recommended,
  {
    rules: {
      ...mistakes,
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      // Index access is checked (noUncheckedIndexedAccess), so `!` is wrong in src; see tests below.
      '@typescript-eslint/no-non-null-assertion': 'error',
    },
  },
  {
    rules: {
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
