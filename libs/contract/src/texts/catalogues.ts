// texts/ hides every word a person reads: one catalogue for each locale, cut into files by screen or family, and say().
// It guarantees that all catalogues have the same keys with the same arguments (catalogues.spec.ts), so that no screen
// or refusal is ever half translated.
//
// A file of texts is `export const floor = {…} as const` of flat ICU messages, the same keys under en-gb/ and en-us/,
// and one line in each of the two lists below. Keys read `area.thing`.
import { cautionsEnGb } from './en-gb/cautions.js';
import { problemsEnGb } from './en-gb/problems.js';
import { refusalsCustomerEnGb } from './en-gb/refusals-customer.js';
import { refusalsHoldEnGb } from './en-gb/refusals-hold.js';
import { refusalsJobEnGb } from './en-gb/refusals-job.js';
import { refusalsOutstandingEnGb } from './en-gb/refusals-outstanding.js';
import { refusalsPartsEnGb } from './en-gb/refusals-parts.js';
import { refusalsAnyEnGb } from './en-gb/refusals-any.js';
import { refusalsPlaceEnGb } from './en-gb/refusals-place.js';
import { refusalsWorkEnGb } from './en-gb/refusals-work.js';
import { refusalsShopEnGb } from './en-gb/refusals-shop.js';
import { refusalsLiftEnGb } from './en-gb/refusals-lift.js';
import { refusalsTimeEnGb } from './en-gb/refusals-time.js';
import { styleTexts as styleTextsEnGb } from './en-gb/style.js';
import { live as liveEnGb } from './en-gb/live.js';
import { entranceEnGb } from './en-gb/entrance.js';
import { floorEnGb } from './en-gb/floor.js';
import { myBayEnGb } from './en-gb/my-bay.js';
import { wordsEnGb } from './en-gb/words.js';
import { wordsDayEnGb } from './en-gb/words-day.js';
import { piecesJobEnGb } from './en-gb/pieces-job.js';
import { piecesBayEnGb } from './en-gb/pieces-bay.js';
import { ui as uiEnGb } from './en-gb/ui.js';
import { piecesEnGb } from './en-gb/pieces.js';
import { logEnGb } from './en-gb/log.js';
import { jobEnGb } from './en-gb/job.js';
import { handBackEnGb } from './en-gb/hand-back.js';
import { deskEnGb } from './en-gb/desk.js';
import { readyEnGb } from './en-gb/ready.js';
import { vehicleEnGb } from './en-gb/vehicle.js';
import { recordsEnGb } from './en-gb/records.js';
import { shopMoreEnGb } from './en-gb/shop-more.js';
import { bayOutagesEnGb } from './en-gb/bay-outages.js';
import { presenceEnGb } from './en-gb/presence.js';
import { deskPiecesEnGb } from './en-gb/desk-pieces.js';
import { waitingEnGb } from './en-gb/waiting.js';
import { partsDeskEnGb } from './en-gb/parts-desk.js';
import { outstandingEnGb } from './en-gb/outstanding.js';
import { bayTimeEnGb } from './en-gb/bay-time.js';
import { shopEnGb } from './en-gb/shop.js';
import { timesEnGb } from './en-gb/times.js';
import { importEnGb } from './en-gb/import.js';
import { recordEnGb } from './en-gb/record.js';
import { csvEnGb } from './en-gb/csv.js';
import { wallEnGb } from './en-gb/wall.js';
import { cautionsEnUs } from './en-us/cautions.js';
import { problemsEnUs } from './en-us/problems.js';
import { refusalsCustomerEnUs } from './en-us/refusals-customer.js';
import { refusalsHoldEnUs } from './en-us/refusals-hold.js';
import { refusalsJobEnUs } from './en-us/refusals-job.js';
import { refusalsOutstandingEnUs } from './en-us/refusals-outstanding.js';
import { refusalsPartsEnUs } from './en-us/refusals-parts.js';
import { refusalsAnyEnUs } from './en-us/refusals-any.js';
import { refusalsPlaceEnUs } from './en-us/refusals-place.js';
import { refusalsWorkEnUs } from './en-us/refusals-work.js';
import { refusalsShopEnUs } from './en-us/refusals-shop.js';
import { refusalsLiftEnUs } from './en-us/refusals-lift.js';
import { refusalsTimeEnUs } from './en-us/refusals-time.js';
import { styleTexts as styleTextsEnUs } from './en-us/style.js';
import { live as liveEnUs } from './en-us/live.js';
import { entranceEnUs } from './en-us/entrance.js';
import { floorEnUs } from './en-us/floor.js';
import { myBayEnUs } from './en-us/my-bay.js';
import { wordsEnUs } from './en-us/words.js';
import { wordsDayEnUs } from './en-us/words-day.js';
import { piecesJobEnUs } from './en-us/pieces-job.js';
import { piecesBayEnUs } from './en-us/pieces-bay.js';
import { ui as uiEnUs } from './en-us/ui.js';
import { piecesEnUs } from './en-us/pieces.js';
import { logEnUs } from './en-us/log.js';
import { jobEnUs } from './en-us/job.js';
import { handBackEnUs } from './en-us/hand-back.js';
import { deskEnUs } from './en-us/desk.js';
import { readyEnUs } from './en-us/ready.js';
import { vehicleEnUs } from './en-us/vehicle.js';
import { recordsEnUs } from './en-us/records.js';
import { shopMoreEnUs } from './en-us/shop-more.js';
import { bayOutagesEnUs } from './en-us/bay-outages.js';
import { presenceEnUs } from './en-us/presence.js';
import { deskPiecesEnUs } from './en-us/desk-pieces.js';
import { waitingEnUs } from './en-us/waiting.js';
import { partsDeskEnUs } from './en-us/parts-desk.js';
import { outstandingEnUs } from './en-us/outstanding.js';
import { bayTimeEnUs } from './en-us/bay-time.js';
import { shopEnUs } from './en-us/shop.js';
import { timesEnUs } from './en-us/times.js';
import { importEnUs } from './en-us/import.js';
import { recordEnUs } from './en-us/record.js';
import { csvEnUs } from './en-us/csv.js';
import { wallEnUs } from './en-us/wall.js';

export const locales = ['en-GB', 'en-US'] as const;
export type Locale = (typeof locales)[number];

const enGb = {
  ...uiEnGb,
  ...problemsEnGb,
  ...cautionsEnGb,
  ...refusalsCustomerEnGb,
  ...refusalsHoldEnGb,
  ...refusalsJobEnGb,
  ...refusalsOutstandingEnGb,
  ...refusalsPartsEnGb,
  ...refusalsAnyEnGb,
  ...refusalsPlaceEnGb,
  ...refusalsWorkEnGb,
  ...refusalsShopEnGb,
  ...refusalsLiftEnGb,
  ...refusalsTimeEnGb,
  ...styleTextsEnGb,
  ...entranceEnGb,
  ...floorEnGb,
  ...myBayEnGb,
  ...wordsEnGb,
  ...wordsDayEnGb,
  ...piecesJobEnGb,
  ...piecesBayEnGb,
  ...liveEnGb,
  ...piecesEnGb,
  ...logEnGb,
  ...jobEnGb,
  ...handBackEnGb,
  ...deskEnGb,
  ...readyEnGb,
  ...vehicleEnGb,
  ...recordsEnGb,
  ...shopMoreEnGb,
  ...bayOutagesEnGb,
  ...presenceEnGb,
  ...deskPiecesEnGb,
  ...waitingEnGb,
  ...partsDeskEnGb,
  ...outstandingEnGb,
  ...bayTimeEnGb,
  ...shopEnGb,
  ...timesEnGb,
  ...importEnGb,
  ...recordEnGb,
  ...csvEnGb,
  ...wallEnGb,
};

export type TextKey = keyof typeof enGb;

const enUs: Readonly<Record<TextKey, string>> = {
  ...uiEnUs,
  ...problemsEnUs,
  ...cautionsEnUs,
  ...refusalsCustomerEnUs,
  ...refusalsHoldEnUs,
  ...refusalsJobEnUs,
  ...refusalsOutstandingEnUs,
  ...refusalsPartsEnUs,
  ...refusalsAnyEnUs,
  ...refusalsPlaceEnUs,
  ...refusalsWorkEnUs,
  ...refusalsShopEnUs,
  ...refusalsLiftEnUs,
  ...refusalsTimeEnUs,
  ...styleTextsEnUs,
  ...entranceEnUs,
  ...floorEnUs,
  ...myBayEnUs,
  ...wordsEnUs,
  ...wordsDayEnUs,
  ...piecesJobEnUs,
  ...piecesBayEnUs,
  ...liveEnUs,
  ...piecesEnUs,
  ...logEnUs,
  ...jobEnUs,
  ...handBackEnUs,
  ...deskEnUs,
  ...readyEnUs,
  ...vehicleEnUs,
  ...recordsEnUs,
  ...shopMoreEnUs,
  ...bayOutagesEnUs,
  ...presenceEnUs,
  ...deskPiecesEnUs,
  ...waitingEnUs,
  ...partsDeskEnUs,
  ...outstandingEnUs,
  ...bayTimeEnUs,
  ...shopEnUs,
  ...timesEnUs,
  ...importEnUs,
  ...recordEnUs,
  ...csvEnUs,
  ...wallEnUs,
};

export const catalogues: Readonly<Record<Locale, Readonly<Record<TextKey, string>>>> = { 'en-GB': enGb, 'en-US': enUs };

export const isLocale = (value: string): value is Locale => locales.some((locale) => locale === value);

export const isTextKey = (key: string): key is TextKey => Object.hasOwn(enGb, key);
