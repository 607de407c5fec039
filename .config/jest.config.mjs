// Four projects by path. `pure` needs nothing but Node; `server` and `long` need PostgreSQL; `browser` needs Chromium
// as well. Any spec under tests/ that is neither a browser nor a long one runs in `server`, so that none is lost.
import { fileURLToPath } from 'node:url';

const rootDir = fileURLToPath(new URL('..', import.meta.url));

const swc = (tsx) => [
  '@swc/jest',
  {
    swcrc: false,
    sourceMaps: 'inline',
    module: { type: 'es6' },
    jsc: {
      target: 'es2023',
      keepClassNames: true,
      parser: { syntax: 'typescript', tsx, decorators: true },
      transform: { legacyDecorator: true, decoratorMetadata: true, react: { runtime: 'automatic' } },
    },
  },
];

const shared = {
  rootDir,
  roots: ['<rootDir>/libs', '<rootDir>/apps', '<rootDir>/tests'],
  testEnvironment: 'node',
  // The cleaning of globals between files trips over expect's own matchers under ESM.
  testEnvironmentOptions: { globalsCleanup: 'off' },
  setupFilesAfterEnv: ['<rootDir>/.config/jest-setup.mjs'],
  extensionsToTreatAsEsm: ['.ts', '.tsx'],
  // js before ts: packages that ship sources beside their built files are taken as built.
  moduleFileExtensions: ['js', 'mjs', 'cjs', 'ts', 'tsx', 'json', 'node'],
  moduleNameMapper: {
    '^@holdfast/([a-z-]+)$': '<rootDir>/libs/$1/src/index.ts',
    '^(\\.{1,2}/.*)\\.js$': '$1',
  },
  transform: { '^.+\\.ts$': swc(false), '^.+\\.tsx$': swc(true) },
  testPathIgnorePatterns: ['/node_modules/', '/dist/'],
  modulePathIgnorePatterns: ['/dist/'],
};

// One PostgreSQL for the whole run, however many of these projects take part.
const onPostgres = {
  globalSetup: '<rootDir>/tests/kit/global-setup.mjs',
  globalTeardown: '<rootDir>/tests/kit/global-teardown.mjs',
};

export default {
  rootDir,
  maxWorkers: 2,
  projects: [
    {
      ...shared,
      displayName: 'pure',
      testMatch: ['<rootDir>/libs/**/*.spec.ts', '<rootDir>/apps/**/*.spec.ts'],
      globals: { testTimeoutMs: 30_000 },
    },
    {
      ...shared,
      displayName: 'server',
      ...onPostgres,
      testMatch: ['<rootDir>/tests/!(browser|long)/**/*.spec.ts'],
      globals: { testTimeoutMs: 60_000 },
    },
    {
      ...shared,
      displayName: 'browser',
      ...onPostgres,
      testMatch: ['<rootDir>/tests/browser/**/*.spec.ts'],
      globals: { testTimeoutMs: 180_000 },
    },
    {
      ...shared,
      displayName: 'long',
      ...onPostgres,
      testMatch: ['<rootDir>/tests/long/**/*.spec.ts'],
      globals: { testTimeoutMs: 600_000 },
    },
  ],
};
