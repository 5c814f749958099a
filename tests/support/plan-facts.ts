import type { Composition } from '@/lib/calc/formula/types'
import type { PlanDoseAsked, PlanFacts, PlanIngredient } from '@/lib/kitchen/trials/plan-types'

/* Invented ingredients with round figures, so that every expectation below can be worked out by hand as a mass balance. */
const composition = (more: Partial<Composition>): Composition => ({
  waterPct: 0,
  proteinPct: 0,
  fatPct: 0,
  carbohydratePct: 0,
  sugarsPct: 0,
  fibrePct: 0,
  ashPct: null,
  sodiumMgPer100g: 0,
  ...more,
})
const ingredient = (id: string, kind: PlanIngredient['kind'], more: Partial<PlanIngredient> = {}): PlanIngredient => ({
  id,
  name: id,
  kind,
  activeName: null,
  activeShare: null,
  customary: null,
  allergens: [],
  allergensChecked: true,
  dustCaution: false,
  isEnded: false,
  composition: null,
  counts: null,
  bindsWater: false,
  ...more,
})
export const invented: PlanIngredient[] = [
  ingredient('flour', 'flour', {
    allergens: ['gluten'],
    composition: composition({ waterPct: 14, proteinPct: 12, carbohydratePct: 73 }),
  }),
  ingredient('water', 'water'),
  ingredient('oil', 'fat', { composition: composition({ fatPct: 100 }) }),
  ingredient('salt', 'salt', { composition: composition({ sodiumMgPer100g: 40_000 }) }),
  ingredient('yoghurt', 'dairy', {
    allergens: ['milk'],
    composition: composition({ waterPct: 88, proteinPct: 4, fatPct: 3.5, carbohydratePct: 4, sugarsPct: 4 }),
  }),
  ingredient('soya flour', 'other', { allergens: ['soya'], composition: composition({ waterPct: 8 }) }),
  ingredient('enzyme', 'improver', {
    activeName: 'amylase',
    activeShare: 0.1,
    dustCaution: true,
    customary: { leastPct: 0.05, mostPct: 0.2, source: 'invented' },
    composition: composition({ carbohydratePct: 90 }),
  }),
  ingredient('malt', 'malt', { allergens: ['gluten'], composition: composition({ waterPct: 8, carbohydratePct: 80 }) }),
  ingredient('flakes', 'other', { allergensChecked: false }),
]
export const doseOf = (ingredientId: string, value: number, more: Partial<PlanDoseAsked> = {}): PlanDoseAsked => ({
  ingredientId,
  basis: 'pct_flour',
  doseOf: 'product',
  value,
  how: 'more',
  insteadOfId: null,
  equalBy: null,
  allOfIt: false,
  ...more,
})

/** One piece of 1650 g: 1000 g flour, 600 g water, 30 g oil, 20 g salt. */
export function plannedFacts(
  more: {
    arms?: PlanFacts['arms']
    declared?: Partial<PlanFacts['declared']>
    process?: Partial<PlanFacts['process']>
    scale?: PlanFacts['scale']
    scales?: PlanFacts['scales']
    waters?: PlanFacts['waters']
    mixer?: PlanFacts['mixer']
    choices?: PlanFacts['choices']
    stages?: PlanFacts['stages']
    ingredients?: PlanFacts['ingredients']
    ownSpread?: PlanFacts['ownSpread']
  } = {},
): PlanFacts {
  const scale =
    more.scale === undefined
      ? { id: 'sc', name: 'Scale', resolutionG: 1, repeatabilityG: 0, leastG: null, mostG: 6000 }
      : more.scale
  return {
    declared: {
      bakery: 'b',
      trial: 't',
      number: 1,
      kind: 'gain',
      question: 'q',
      note: '',
      formula: { id: 'f', name: 'Tin' },
      controlVersion: { id: 'v', number: 1, contentHash: null },
      measure: { id: 'm', name: 'Specific volume', unit: 'mL/g', digits: 2, level: 'piece', direction: 'larger' },
      margin: 5,
      marginUnit: 'pct',
      confidencePct: 95,
      holdsFor: 'any_day',
      blinded: ['baking', 'measuring'],
      mixingDays: 3,
      batchesPerArm: 1,
      piecesPerBatch: 1,
      heldTotals: ['water', 'fat'],
      flourTempC: 20,
      roomTempC: 22,
      tapTempC: 12,
      ...more.declared,
    },
    process: {
      scalingMassG: 1650,
      doughLossPct: 0,
      doughTempC: 26,
      mixTimeS: 600,
      bulkTimeS: 3600,
      proofTimeS: 3000,
      bakeTempC: 220,
      bakeTimeS: 2100,
      ...more.process,
    },
    stages: more.stages ?? [
      {
        id: 's',
        kind: 'final_dough',
        name: '',
        lines: [
          ['flour', 100],
          ['water', 60],
          ['oil', 3],
          ['salt', 2],
        ].map(([id, pct], i) => ({ id: `l${i}`, ingredientId: String(id), pctFlour: Number(pct) })),
      },
    ],
    arms: more.arms ?? [{ name: 'yoghurt', onTop: false, doses: [doseOf('yoghurt', 10)] }],
    choices: more.choices ?? [],
    ingredients: more.ingredients ?? invented,
    scale,
    scales: more.scales ?? (scale ? [scale] : []),
    ownSpread: more.ownSpread ?? { sd: 0, df: 0, trials: 0 },
    waters: more.waters ?? { hot: null, chilled: null, ice: null },
    mixer:
      more.mixer === undefined ? { id: 'mx', name: 'Mixer', leastG: 500, mostG: 5000, frictionCPerMin: 1 } : more.mixer,
  }
}
