/**
 * How much thread has to be engaged, and whether a screw bottoms. The books differ, so every answer names its rule, and
 * the shop chooses one; none of them is the vehicle maker's.
 */
export type TappedMaterial = 'steel' | 'castIron' | 'stainless' | 'hardBrass' | 'aluminium' | 'softMetal';

export interface EngagementRule {
  readonly id: 'workmanship' | 'engineMaker' | 'army';
  readonly source: string;
  /** needed engagement as a multiple of the nominal diameter, for the materials that the rule speaks of */
  readonly diameters: Readonly<Partial<Record<TappedMaterial, number>>>;
}

export const engagementRules: readonly EngagementRule[] = [
  {
    id: 'workmanship',
    source: 'public workmanship specification, 15.8.13 (issuing body not identified)',
    diameters: { steel: 1, stainless: 1, hardBrass: 1, aluminium: 1.5, softMetal: 1.5 },
  },
  { id: 'engineMaker', source: "an engine maker's manual", diameters: { steel: 1.25, castIron: 1.25, aluminium: 2 } },
  { id: 'army', source: 'US Army TM 9-6115-604-34', diameters: { aluminium: 2 } },
];

export interface Engagement {
  readonly rule: EngagementRule;
  readonly neededMm: number;
}

/** What each rule asks that speaks of the material, the most demanding first. */
export function engagementNeeded(diameterMm: number, material: TappedMaterial): readonly Engagement[] {
  return engagementRules
    .flatMap((rule) => {
      const times = rule.diameters[material];
      return times === undefined ? [] : [{ rule, neededMm: times * diameterMm }];
    })
    .sort((a, b) => b.neededMm - a.neededMm);
}
