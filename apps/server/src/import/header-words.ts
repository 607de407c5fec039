import { fieldsOfImport, type ImportField, type ImportMapping } from '@holdfast/contract';
import { foldKey, type ImportKind } from '@holdfast/domain';

/** Words that other people's files use for a field, as they are folded. The first that fits wins. */
const words: Readonly<Record<ImportField, readonly string[]>> = {
  name: [
    'name',
    'customer',
    'customer name',
    'client',
    'company',
    'full name',
    'account name',
    'kunde',
    'firma',
    'nom',
    'nombre',
  ],
  contactName: ['contact', 'contact name', 'contact person', 'attention', 'ansprechpartner'],
  phone: [
    'phone',
    'telephone',
    'tel',
    'mobile',
    'cell',
    'phone number',
    'telephone number',
    'mobile phone',
    'customer phone',
    'telefon',
    'handy',
  ],
  mail: ['mail', 'email', 'e-mail', 'email address', 'mail address', 'customer email'],
  fleet: ['fleet', 'fleet name', 'fleet account'],
  plate: [
    'plate',
    'registration',
    'reg',
    'reg no',
    'registration number',
    'licence plate',
    'license plate',
    'number plate',
    'vrm',
    'rego',
    'kennzeichen',
    'vehicle registration',
    'immatriculation',
    'matricula',
  ],
  vin: ['vin', 'vin number', 'chassis', 'chassis number', 'chassis no', 'frame number', 'fin', 'fahrgestellnummer'],
  description: ['description', 'vehicle', 'car', 'vehicle description', 'make and model', 'make/model', 'fahrzeug'],
  make: ['make', 'brand', 'manufacturer', 'marke', 'marque', 'hersteller'],
  model: ['model', 'modell', 'modele', 'modelo'],
  year: ['year', 'model year', 'year of manufacture', 'baujahr'],
  vehicleKind: ['kind', 'type', 'vehicle type', 'category', 'vehicle kind', 'class'],
  drive: ['drive', 'fuel', 'fuel type', 'engine type', 'antrieb', 'kraftstoff', 'energy'],
  curbKg: [
    'curb kg',
    'curb weight',
    'kerb weight',
    'kerb mass kg',
    'curb mass kg',
    'unladen weight',
    'curb mass',
    'kerb mass',
    'leergewicht',
    'curb',
  ],
  grossKg: ['gross kg', 'gross weight', 'gross mass kg', 'gvw', 'gvm', 'gvwr', 'gross mass', 'gesamtgewicht', 'gross'],
  notes: ['notes', 'note', 'remarks', 'comments', 'bemerkung'],
  customerName: ['customer', 'customer name', 'owner', 'owner name', 'keeper', 'client', 'name', 'halter', 'company'],
  followUpKind: ['kind', 'type', 'category', 'reason'],
  title: ['title', 'work', 'what', 'job', 'recommendation', 'description', 'item', 'advisory', 'outstanding work'],
  words: ['words', 'notes', 'details', 'remarks', 'comments', 'note'],
  urgency: ['urgency', 'priority', 'severity'],
  beforeDay: [
    'before day',
    'before',
    'due',
    'due date',
    'by',
    'date',
    'due on',
    'deadline',
    'before date',
    'next date',
  ],
  beforeOdometer: [
    'before odometer',
    'odometer',
    'mileage',
    'due mileage',
    'kilometres',
    'km',
    'due km',
    'miles',
    'at odometer',
  ],
};

/**
 * Which column each field of such a file most likely is: the header is one of the field's words, or else holds one of five
 * letters or more. No column is proposed twice.
 */
export function proposedMapping(kind: ImportKind, header: readonly string[]): ImportMapping {
  const folded = header.map(foldKey);
  const taken = new Set<number>();
  const mapping: ImportMapping = {};
  const take = (field: ImportField, fits: (column: string, word: string) => boolean): void => {
    if (mapping[field] !== undefined) return;
    for (const word of words[field]) {
      const key = foldKey(word);
      const at = folded.findIndex((column, place) => !taken.has(place) && fits(column, key));
      if (at === -1) continue;
      taken.add(at);
      mapping[field] = at;
      return;
    }
  };
  const fields = fieldsOfImport[kind];
  for (const field of fields) take(field, (column, word) => column === word);
  for (const field of fields) take(field, (column, word) => word.length >= 5 && column.includes(word));
  return mapping;
}
