import { type Customer, townsperson } from './cast.js';
import { type Kind, plateOf } from './vehicles.js';
import type { KnownVehicle } from './visit-parts.js';

/** A vehicle that the shop has not seen before; its number gives plate, odometer and, where none is said, its owner. */
export function sceneVehicle(number: number, kind: Kind, customer: Customer = townsperson(number)): KnownVehicle {
  const odometer = 40_000 + number * 97;
  return { plate: plateOf(number), kind, customer, odometer, isHere: false, id: null, lastHere: 0 };
}
