export * from './commands/commands.js';
export type { CommandClass, CommandSpec, ScreenName, Wire } from './commands/spec.js';
export * from './live.js';
export * from './problem.js';
export * from './roles.js';
export { isLocale, isTextKey, locales, type Locale, type TextKey } from './texts/catalogues.js';
export { say, type TextValues } from './texts/say.js';
export * from './version.js';
export * from './views/session.js';
