/**
 * The shop itself: people, bays, hours, seasons, suppliers. Hidden here: that most of it is valid from a day on, so that
 * last year's figures do not change by an edit, and that entries of one day replace each other. Guaranteed: a shop has an
 * owner who works here; names by which people sign in and bays are called are unique; a bay never has fewer spots than
 * vehicles that stand in it (rule 1); hours are of the shop's zone (rule 13). Passwords never come here.
 */
import type { Family } from '../kernel/family.js';
import { addBay, changeBay } from './bays.js';
import { changeSettings, changeShop } from './change-shop.js';
import { endException, setException } from './exceptions.js';
import { setOpeningHours, setSeasons } from './hours-and-seasons.js';
import { addPerson, changePerson } from './people.js';
import { setUpShop } from './set-up-shop.js';
import { addSupplier, changeSupplier } from './suppliers.js';

export const shopFamily: Family<
  | 'setUpShop'
  | 'changeShop'
  | 'changeSettings'
  | 'addPerson'
  | 'changePerson'
  | 'addBay'
  | 'changeBay'
  | 'setOpeningHours'
  | 'setException'
  | 'endException'
  | 'setSeasons'
  | 'addSupplier'
  | 'changeSupplier'
> = {
  setUpShop,
  changeShop,
  changeSettings,
  addPerson,
  changePerson,
  addBay,
  changeBay,
  setOpeningHours,
  setException,
  endException,
  setSeasons,
  addSupplier,
  changeSupplier,
};
