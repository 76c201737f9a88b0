import { fileURLToPath } from 'node:url';
import astro from 'eslint-plugin-astro';
import tseslint from 'typescript-eslint';

// Run from the project folder, by npm run check:lint (files that did not change are not looked at again) or by
// the test command, which looks at all of them: what one file says can be wrong for the types of another.
// `astro check` runs the compiler in another stage; here types are asked only what it does not ask.

const projectFolder = fileURLToPath(new URL('..', import.meta.url));

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

/** Rules that need to know types: promises that nobody waits for, cases that nobody thought of. */
const typed = {
  '@typescript-eslint/await-thenable': 'error',
  '@typescript-eslint/no-floating-promises': 'error',
  '@typescript-eslint/no-misused-promises': 'error',
  '@typescript-eslint/no-unnecessary-condition': ['error', { allowConstantLoopConditions: true }],
  '@typescript-eslint/only-throw-error': 'error',
  '@typescript-eslint/switch-exhaustiveness-check': [
    'error',
    { considerDefaultExhaustiveForUnions: true },
  ],
};

const houseStyle = {
  'no-restricted-syntax': [
    'error',
    {
      selector: 'ExportDefaultDeclaration',
      message: 'Named exports only (configs and .astro excepted): a name is the same everywhere.',
    },
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
  { ignores: ['dist/', '.astro/', 'tests/.output/', 'src/public/'] },
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
    files: ['src/**/*.{ts,tsx}', 'tests/**/*.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: projectFolder } },
    rules: typed,
  },
  { files: ['src/**'], rules: houseStyle },
  {
    files: ['src/**/*.astro'],
    rules: {
      // An .astro file is its own default export; only re-exports stay forbidden there.
      'no-restricted-syntax': ['error', ...houseStyle['no-restricted-syntax'].slice(2)],
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
  {
    files: ['tests/**', '*.config.*'],
    rules: {
      // A test that reads a missing entry should stop with an error, which `!` makes it do.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  {
    // Command-line programs speak on the console.
    files: ['tests/**/*.mjs', 'tests/bench/**', 'tests/mutation/**', 'tests/tools/**'],
    rules: { 'no-console': 'off' },
  },
);
