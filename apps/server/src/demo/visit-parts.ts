/** Whose visit it is, and its parts: wanted, ordered, told later dates, received. */
import type { CommandInputs } from '@holdfast/domain';
import type { Customer, PersonKey, SupplierKey } from './cast.js';
import type { Floor } from './floor.js';
import type { Kind } from './vehicles.js';

/** A vehicle of the story, known to the shop once it has been there. */
export interface KnownVehicle {
  readonly plate: string;
  readonly kind: Kind;
  readonly customer: Customer;
  odometer: number;
  isHere: boolean;
  id: string | null;
  /** Day of the last visit, epoch ms. */
  lastHere: number;
}

/** What others need of a visit under way. */
export interface VisitUnderWay {
  readonly floor: Floor;
  readonly vehicle: KnownVehicle;
  readonly vehicleId: string;
  readonly jobId: string;
  readonly concerns: readonly { readonly id: string; readonly conditions: string | null }[];
}

export class VisitParts {
  jobId = '';

  constructor(
    readonly floor: Floor,
    readonly vehicle: KnownVehicle,
  ) {}

  want(
    by: PersonKey,
    purpose: { lineId: string } | { followUpId: string },
    part: Omit<CommandInputs['wantPart'], 'lineId' | 'followUpId' | 'partLineId'>,
  ): string {
    return this.floor.send(by, 'wantPart', { ...purpose, ...part })('partLine');
  }

  order(
    partLineId: string,
    supplier: SupplierKey,
    due: NonNullable<CommandInputs['placeOrder']['lines'][number]['due']>,
  ): void {
    const { floor } = this;
    floor.send('clerk', 'placeOrder', {
      supplierId: floor.supplier(supplier),
      reference: floor.orderReference(),
      lines: [{ partLineId, due }],
    });
  }

  due(partLineId: string, due: Omit<CommandInputs['recordDueIn'], 'partLineIds'>): void {
    this.floor.send('clerk', 'recordDueIn', { partLineIds: [partLineId], ...due });
  }

  receive(
    partLineId: string,
    quantity: string,
    verdict: 'good' | 'accepted' | 'damaged' | 'wrong' = 'good',
    words?: string,
  ): void {
    const bin = `Shelf ${this.floor.chance.between(1, 9)}`;
    this.floor.send('clerk', 'receiveParts', {
      items: [
        {
          partLineId,
          quantity,
          verdict,
          ...(verdict === 'good' ? { bin } : {}),
          ...(words === undefined ? {} : { words }),
        },
      ],
    });
  }
}
