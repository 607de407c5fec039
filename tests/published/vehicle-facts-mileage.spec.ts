/**
 * Mileage, units and the straight line against FHWA, NHTS, NHTSA, NIST SP 811 and the certified values of NIST StRD, each
 * with its source. The case numbers are those of the project's reference lists.
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from '@jest/globals';
import {
  convert,
  drivenRate,
  leastSquares,
  lifetimeKm,
  mileagePrior,
  mileagePriors,
  projectedReading,
  theilSen,
} from '@holdfast/vehicle-facts';

describe('105–110: mileage', () => {
  it('105: the FHWA means per driver (13,476; 16,550; 10,142 miles) are the mean of no vehicle here', () => {
    const perDriver = [13_476, 16_550, 10_142];
    for (const name of mileagePriors) {
      const miles = convert(mileagePrior(name).kmPerYear, 'km', 'mi');
      for (const one of perDriver) expect(Math.abs(miles - one)).toBeGreaterThan(1);
    }
  });
  it('106: 18,054 km a light vehicle in 2009; 4221 a motorcycle (FHWA VM-1M)', () => {
    expect(mileagePrior('us2009Light')).toMatchObject({
      kmPerYear: 18_054,
      source: 'FHWA Highway Statistics 2009, table VM-1M',
    });
    expect(mileagePrior('us2009Motorcycle').kmPerYear).toBe(4221);
  });
  it.each([
    [4_233_119, 234_467_679, 18_054],
    [3_240_311, 193_979_654, 16_704],
    [992_809, 40_488_025, 24_521],
    [4_753_200, 254_212_610, 18_698],
  ])('107: %d million km over %d vehicles are %d km each (FHWA 2009 rows)', (millionKm, vehicles, each) => {
    expect(Math.round((millionKm * 1e6) / vehicles)).toBe(each);
  });
  it('108: 10,200 miles a household vehicle, 7800 over nine years, over 12,000 from one to five (DOE FOTW 1046)', () => {
    const miles = (name: 'us2017' | 'usOver9' | 'usAge1to5') => convert(mileagePrior(name).kmPerYear, 'km', 'mi');
    expect(miles('us2017')).toBeCloseTo(10_200, 8);
    expect(miles('usOver9')).toBeCloseTo(7800, 8);
    expect(miles('usAge1to5')).toBeCloseTo(12_000, 8);
    expect(mileagePrior('usAge1to5').atLeast).toBe(true);
  });
  it('109: 152,137 miles in the life of a car, 179,954 of a light truck (DOT HS 809 952)', () => {
    expect(convert(lifetimeKm.passengerCar.km, 'km', 'mi')).toBeCloseTo(152_137, 7);
    expect(convert(lifetimeKm.lightTruck.km, 'km', 'mi')).toBeCloseTo(179_954, 7);
  });
  it('110: 40,000 on 2026-01-01 and 45,000 on 2026-05-01 make 53,666.67 on 2026-11-25', () => {
    const rate = drivenRate(
      [
        { day: '2026-01-01', value: 40_000, unit: 'km' },
        { day: '2026-05-01', value: 45_000, unit: 'km' },
      ],
      null,
    );
    if (rate === null) throw new Error('No rate.');
    expect(projectedReading(rate, '2026-11-25').likely).toBeCloseTo(53_666.67, 2);
  });
  it('110: one reading of 45,000 miles on 2026-05-01 at 10,200 a year makes 50,812.6', () => {
    const rate = drivenRate([{ day: '2026-05-01', value: 45_000, unit: 'mi' }], mileagePrior('us2017'));
    if (rate === null) throw new Error('No rate.');
    expect(rate.guess).toBe(true);
    expect(projectedReading(rate, '2026-11-25').likely).toBeCloseTo(50_812.6, 1);
  });
});

describe('111–116: units (NIST SP 811, appendix B)', () => {
  it.each([
    ['111: 1 lbf ft in N m', 1, 'poundFoot', 'newtonMetre', 1.3558179483314004],
    ['111: 1 lbf in in N m', 1, 'poundInch', 'newtonMetre', 0.1129848290276167],
    ['112: 1 mile in km', 1, 'mi', 'km', 1.609344],
    ['113: 1 kgf m in N m', 1, 'kilogramForceMetre', 'newtonMetre', 9.80665],
    ['1 lbf in N', 1, 'lbf', 'N', 4.4482216152605],
    ['1 psi in kPa', 1, 'psi', 'kPa', 6.894757293168361],
    ['1 lb in kg', 1, 'lb', 'kg', 0.45359237],
    ['1 in in mm', 1, 'in', 'mm', 25.4],
    ['1 US gallon in litres (from memory)', 1, 'usGallon', 'litre', 3.785411784],
    ['100 miles in km', 100, 'mi', 'km', 160.9344],
    ['12,000 miles in km', 12_000, 'mi', 'km', 19_312.128],
  ] as const)('%s', (_, value, from, to, printed) => {
    expect(Math.abs(convert(value, from, to) / printed - 1)).toBeLessThan(1e-14);
  });

  it('114: 100 lb ft are 135.58 N m; the maker prints 135 (2012 Focus guide): printed pairs are within 2 %, and not equal', () => {
    expect(convert(100, 'poundFoot', 'newtonMetre')).toBeCloseTo(135.58, 2);
    for (const [feet, printed] of [
      [100, 135],
      [66, 90],
      [75, 100],
      [450, 610],
      [500, 678],
    ] as const) {
      expect(Math.abs(convert(feet, 'poundFoot', 'newtonMetre') / printed - 1)).toBeLessThan(0.02);
    }
  });
  it('115: 88.3 to 107.9 N m are 65.1 to 79.6 lb ft and 9.0 to 11.0 kgf m (service manual)', () => {
    const round = (value: number) => Math.round(value * 10) / 10;
    expect([88.3, 107.9].map((one) => round(convert(one, 'newtonMetre', 'poundFoot')))).toEqual([65.1, 79.6]);
    expect([88.3, 107.9].map((one) => round(convert(one, 'newtonMetre', 'kilogramForceMetre')))).toEqual([9, 11]);
  });
  it('116: 100,000 km are 62,137.119 miles', () => {
    expect(convert(100_000, 'km', 'mi')).toBeCloseTo(62_137.119, 3);
  });
});

/** NIST StRD "Norris", 36 observations, y then x. Public data of the National Institute of Standards and Technology. */
const norris = `0.1,0.2 338.8,337.4 118.1,118.2 888.0,884.6 9.2,10.1 228.1,226.5 668.5,666.3 998.5,996.3 449.1,448.6
778.9,777.0 559.2,558.2 0.3,0.4 0.1,0.6 778.1,775.5 668.8,666.9 339.3,338.0 448.9,447.5 10.8,11.6 557.7,556.0 228.3,228.1
998.0,995.8 888.8,887.6 119.6,120.2 0.3,0.3 0.6,0.3 557.6,556.8 339.3,339.1 888.0,887.2 998.5,999.0 778.9,779.0 10.2,11.1
117.6,118.3 228.9,229.2 668.4,669.1 449.2,448.9 0.2,0.5`;

const pointsOf = (text: string) =>
  text
    .trim()
    .split(/\s+/)
    .filter((row) => /\d/.test(row))
    .map((row) => {
      const [y, x] = row.split(',').map(Number);
      return { x: x ?? Number.NaN, y: y ?? Number.NaN };
    });

describe('REG-1: NIST StRD Norris, certified values', () => {
  it('slope, intercept, their errors, the residual deviation and R² to ten figures', () => {
    const line = leastSquares(pointsOf(norris));
    const off = (value: number, certified: number): number => Math.abs(value / certified - 1);
    expect(off(line.slope, 1.00211681802045)).toBeLessThan(1e-13);
    expect(off(line.intercept, -0.262323073774029)).toBeLessThan(1e-10);
    expect(off(line.slopeError, 0.000429796848199937)).toBeLessThan(1e-10);
    expect(off(line.interceptError, 0.232818234301152)).toBeLessThan(1e-10);
    expect(off(line.residualDeviation, 0.884796396144373)).toBeLessThan(1e-10);
    expect(off(line.rSquared, 0.999993745883712)).toBeLessThan(1e-13);
  });

  it('the points carried over are those of the data file, and the robust line lies within a standard error or two', () => {
    const file = fileURLToPath(new URL('../../../shared/reference/data/regression/nist-norris.csv', import.meta.url));
    if (!existsSync(file)) console.log('nist-norris.csv is absent; the 36 points carried over are checked.');
    else expect(pointsOf(readFileSync(file, 'utf8'))).toEqual(pointsOf(norris));
    expect(Math.abs((theilSen(pointsOf(norris))?.slope ?? 0) - 1.00211681802045)).toBeLessThan(
      2 * 0.000429796848199937,
    );
  });
});

it('the exact factors of the data file', () => {
  const file = fileURLToPath(new URL('../../../shared/reference/data/vehicle/mileage-and-units.json', import.meta.url));
  if (!existsSync(file)) {
    console.log('mileage-and-units.json is absent; the factors above are all that is checked.');
    return;
  }
  const { units_exact: exact } = JSON.parse(readFileSync(file, 'utf8')) as {
    readonly units_exact: Readonly<Record<string, number>>;
  };
  const ours: Readonly<Record<string, number>> = {
    in_mm: convert(1, 'in', 'mm'),
    mi_km: convert(1, 'mi', 'km'),
    lb_kg: convert(1, 'lb', 'kg'),
    lbf_N: convert(1, 'lbf', 'N'),
    lbf_ft_Nm: convert(1, 'poundFoot', 'newtonMetre'),
    lbf_in_Nm: convert(1, 'poundInch', 'newtonMetre'),
    psi_kPa: convert(1, 'psi', 'kPa'),
    kgf_m_Nm: convert(1, 'kilogramForceMetre', 'newtonMetre'),
  };
  for (const [name, value] of Object.entries(ours)) {
    expect(Math.abs(value / (exact[name] ?? Number.NaN) - 1)).toBeLessThan(1e-14);
  }
});
