// Every rule here guards one of the house rules in DEVELOPERS.md. There is no way to switch a rule off in a file.
import { builtinRules } from 'eslint/use-at-your-own-risk';
import reactHooks from 'eslint-plugin-react-hooks';
import tseslint from 'typescript-eslint';

const typed = ['**/*.ts', '**/*.tsx'];
// A story of the kit is a list of steps, as a spec is.
const specs = ['**/*.spec.ts', '**/*.spec.tsx', 'tests/kit/every-command.ts'];
const settings = ['.config/**', '**/vite.config.ts'];

const noDefaultExport = {
  selector: 'ExportDefaultDeclaration',
  message: 'Export by name; only settings of a tool have a default export.',
};
const noCurrentTime = [
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: 'A pure library is given `now` as an argument (epoch milliseconds).',
  },
  {
    selector: "CallExpression[callee.name='Date']",
    message: 'A pure library is given `now` as an argument (epoch milliseconds).',
  },
];

// Fields of a Date in the zone of the machine: a shop has its own zone, and the calendar knows it.
const machineZone = ['FullYear', 'Month', 'Date', 'Day', 'Hours', 'Minutes', 'TimezoneOffset'].map((part) => ({
  property: `get${part}`,
  message: 'Reads the zone of the machine. Ask libs/shop-calendar, which is given the zone.',
}));

const impure = (name) => ({
  name,
  message: 'Pure libraries do no I/O and know no clock; the caller hands in what it read.',
});

export default tseslint.config(
  {
    ignores: ['**/dist/**', '**/generated/**', '**/node_modules/**', 'data/**', 'coverage/**', 'tests/browser/out/**'],
  },
  { linterOptions: { noInlineConfig: true, reportUnusedDisableDirectives: 'error' } },
  {
    files: typed,
    extends: [tseslint.configs.strictTypeChecked],
    plugins: { size: { rules: { 'max-lines': builtinRules.get('max-lines') } } },
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: `${import.meta.dirname}/..` } },
    rules: {
      'size/max-lines': ['warn', 300],
      'max-lines': ['error', 350],
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
      complexity: ['error', 15],
      'max-params': ['error', 5],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-console': 'off',
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx'] }],
      'no-restricted-syntax': ['error', noDefaultExport],
      '@typescript-eslint/ban-ts-comment': [
        'error',
        { 'ts-expect-error': true, 'ts-ignore': true, 'ts-nocheck': true, 'ts-check': true },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': [
        'error',
        { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
      ],
      '@typescript-eslint/no-extraneous-class': ['error', { allowWithDecorator: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', ignoreRestSiblings: true }],
      '@typescript-eslint/naming-convention': [
        'error',
        { selector: 'interface', format: ['PascalCase'], custom: { regex: '^I[A-Z]', match: false } },
        { selector: ['class', 'typeAlias', 'enum'], format: ['PascalCase'] },
      ],
    },
  },
  {
    // Nest reads constructor parameters' classes at run time, so the server imports classes as values.
    files: ['apps/server/src/**/*.ts'],
    rules: { '@typescript-eslint/consistent-type-imports': 'off' },
  },
  {
    files: ['libs/*/src/**/*.ts'],
    ignores: specs,
    rules: {
      'no-restricted-globals': [
        'error',
        ...[
          'process',
          'setTimeout',
          'setInterval',
          'setImmediate',
          'queueMicrotask',
          'crypto',
          'fetch',
          'performance',
          'console',
        ].map(impure),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Date', property: 'now', message: 'A pure library is given `now` as an argument.' },
        { object: 'Temporal', property: 'Now', message: 'A pure library is given `now` as an argument.' },
        { object: 'Math', property: 'random', message: 'A pure library is given its random source as an argument.' },
        ...['process', 'crypto', 'fetch', 'performance', 'setTimeout', 'setInterval'].map((property) => ({
          object: 'globalThis',
          property,
          message: 'Pure libraries do no I/O and know no clock.',
        })),
        ...machineZone,
      ],
      'no-restricted-syntax': ['error', noDefaultExport, ...noCurrentTime],
    },
  },
  {
    files: ['apps/web/src/**/*.ts', 'apps/web/src/**/*.tsx'],
    extends: [reactHooks.configs.flat.recommended],
  },
  {
    files: ['**/*.tsx'],
    rules: { 'max-lines-per-function': ['error', { max: 80, skipBlankLines: true, skipComments: true }] },
  },
  { files: specs, rules: { 'max-lines-per-function': 'off', 'max-params': 'off' } },
  { files: settings, rules: { 'no-restricted-syntax': 'off' } },
  {
    files: ['**/*.mjs', '**/*.cjs', '**/*.js', '.config/**/*.ts'],
    extends: [tseslint.configs.disableTypeChecked],
    languageOptions: { parser: tseslint.parser, parserOptions: { projectService: false } },
    rules: {
      '@typescript-eslint/naming-convention': 'off',
      '@typescript-eslint/switch-exhaustiveness-check': 'off',
    },
  },
);
