import { randomUUID } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { db } from '../../lib/db/client'
import type { Allergen, Figure, IngredientKind } from '../../lib/db/generated/enums'
import { contentAsItIsNow } from '../../lib/kitchen/formulas/content-as-shown'
import { readVersion } from '../../lib/kitchen/formulas/read-version'
import { testNow } from './bakery'

type Sample = {
  name: string
  kind: IngredientKind
  allergens?: Allergen[]
  isUnchecked?: true
  figures?: Partial<Record<Figure, number>>
  active?: { name: string; share: number }
  customary?: { least: number; most: number }
  pricePerKg: string | null
}

/** Invented ingredients with round figures; nobody looked any of them up. */
const samples = {
  flour: {
    name: 'Bread flour',
    kind: 'flour',
    allergens: ['gluten'],
    figures: { water: 14, protein: 12, fat: 1, carbohydrate: 72, sugars: 1, fibre: 3, salt: 0 },
    pricePerKg: '0.8',
  },
  water: {
    name: 'Water',
    kind: 'water',
    figures: { water: 100, protein: 0, fat: 0, carbohydrate: 0, sugars: 0, fibre: 0, salt: 0 },
    pricePerKg: null,
  },
  salt: {
    name: 'Salt',
    kind: 'salt',
    figures: { water: 0, protein: 0, fat: 0, carbohydrate: 0, sugars: 0, fibre: 0, salt: 100 },
    pricePerKg: '0.5',
  },
  yeast: {
    name: 'Fresh yeast',
    kind: 'leaven',
    figures: { water: 70, protein: 13, fat: 1, carbohydrate: 13, sugars: 0, fibre: 0, salt: 0 },
    pricePerKg: '3',
  },
  oil: {
    name: 'Sunflower oil',
    kind: 'fat',
    figures: { water: 0, protein: 0, fat: 100, carbohydrate: 0, sugars: 0, fibre: 0, salt: 0 },
    pricePerKg: '2',
  },
  malt: {
    name: 'Malt powder',
    kind: 'malt',
    allergens: ['gluten'],
    figures: { water: 5, protein: 10, fat: 2, carbohydrate: 80, sugars: 60, fibre: 5, salt: 0 },
    active: { name: 'malt sugars', share: 0.6 },
    customary: { least: 0.2, most: 1 },
    pricePerKg: '4',
  },
  yoghurt: {
    name: 'Yoghurt',
    kind: 'dairy',
    allergens: ['milk'],
    figures: { water: 88, protein: 4, fat: 3.5, carbohydrate: 4, sugars: 4, fibre: 0, salt: 0 },
    pricePerKg: '1.5',
  },
  potatoFlakes: { name: 'Potato flakes', kind: 'other', isUnchecked: true, pricePerKg: '3' },
} as const satisfies Record<string, Sample>

export type TrialIngredientKey = keyof typeof samples
export type TrialStores = {
  ids: Record<TrialIngredientKey, string>
  formulaId: string
  versionId: string
  scaleId: string
  mixerId: string
  measureIds: Record<string, string>
}

/** What a trial is made of: ingredients with prices, a scale, a mixer, and a signed formula in production. */
export async function makeTrialStores(
  bakery: { bakeryId: string; owner: { personId: string } },
  now: Date = testNow,
): Promise<TrialStores> {
  const { bakeryId, owner } = bakery
  const ids = {} as Record<TrialIngredientKey, string>
  for (const [key, sample] of Object.entries(samples) as [TrialIngredientKey, Sample][]) {
    const id = (ids[key] = uuid())
    await db().ingredient.create({
      data: {
        bakeryId,
        id,
        name: sample.name,
        kind: sample.kind,
        labelName: sample.name,
        activeName: sample.active?.name ?? null,
        activeShare: sample.active?.share ?? null,
        customaryLeastPct: sample.customary?.least ?? null,
        customaryMostPct: sample.customary?.most ?? null,
        customarySource: sample.customary ? 'invented' : null,
        allergens: sample.allergens ?? [],
        allergensCheckedAt: sample.isUnchecked ? null : now,
        dustCaution: sample.kind === 'malt',
        note: '',
        revision: 1,
        createdAt: now,
      },
    })
    const figures = Object.entries(sample.figures ?? {}) as [Figure, number][]
    await db().ingredientFigure.createMany({
      data: figures.map(([figure, gPer100G]) => ({ bakeryId, ingredientId: id, figure, gPer100G, source: 'invented' })),
    })
    if (sample.pricePerKg !== null) {
      await db().price.create({
        data: {
          bakeryId,
          id: uuid(),
          ingredientId: id,
          holdsFrom: new Date('2026-01-01'),
          packMassG: 1000,
          packPrice: sample.pricePerKg,
          currency: 'EUR',
          supplier: 'invented',
          enteredById: owner.personId,
          enteredAt: now,
        },
      })
    }
  }
  const equipment = { bakeryId, note: '', revision: 1, createdAt: now }
  const scaleId = uuid()
  const mixerId = uuid()
  await db().equipment.create({
    data: {
      ...equipment,
      id: scaleId,
      kind: 'scale',
      name: 'Bench scale',
      leastG: 5,
      mostG: 15_000,
      resolutionG: 1,
      repeatabilityG: 0.5,
    },
  })
  await db().equipment.create({
    data: {
      ...equipment,
      id: mixerId,
      kind: 'mixer',
      name: 'Small spiral',
      leastG: 2000,
      mostG: 12_000,
      frictionCPerMin: 0.9,
    },
  })
  const { formulaId, versionId } = await makeSignedFormula(bakeryId, owner.personId, ids, now)
  const measures = await db().measure.findMany({ where: { bakeryId }, select: { id: true, code: true } })
  return {
    ids,
    formulaId,
    versionId,
    scaleId,
    mixerId,
    measureIds: Object.fromEntries(measures.map(({ id, code }) => [code ?? id, id])),
  }
}

async function makeSignedFormula(
  bakeryId: string,
  draftedById: string,
  ids: Record<TrialIngredientKey, string>,
  now: Date,
) {
  const formulaId = uuid()
  const versionId = uuid()
  await db().formula.create({
    data: { bakeryId, id: formulaId, name: `Tin loaf ${randomUUID().slice(0, 8)}`, createdAt: now },
  })
  await db().formulaVersion.create({
    data: {
      bakeryId,
      id: versionId,
      formulaId,
      number: 1,
      reason: 'first',
      scalingMassG: 850,
      pieces: 12,
      doughLossPct: 2,
      doughTempC: 26,
      mixTimeS: 600,
      bulkTimeS: 3600,
      proofTimeS: 3000,
      bakeTempC: 220,
      bakeTimeS: 2100,
      method: '',
      draftedById,
      createdAt: now,
      revision: 1,
    },
  })
  const spongeId = uuid()
  const doughId = uuid()
  const stages = [
    { id: spongeId, position: 0, kind: 'pre_ferment', name: 'Sponge' },
    { id: doughId, position: 1, kind: 'final_dough', name: '' },
  ] as const
  await db().formulaStage.createMany({ data: stages.map((stage) => ({ bakeryId, versionId, ...stage })) })
  const lines: [string, TrialIngredientKey, number][] = [
    [spongeId, 'flour', 20],
    [spongeId, 'water', 20],
    [spongeId, 'yeast', 0.2],
    [doughId, 'flour', 80],
    [doughId, 'water', 45],
    [doughId, 'oil', 3],
    [doughId, 'salt', 1.8],
    [doughId, 'yeast', 1.7],
  ]
  await db().formulaLine.createMany({
    data: lines.map(([stageId, key, pctFlour], position) => ({
      bakeryId,
      id: uuid(),
      versionId,
      stageId,
      position,
      ingredientId: ids[key],
      pctFlour,
    })),
  })
  const version = await readVersion(db(), bakeryId, versionId)
  if (!version) throw new Error('the version that was just written is not there')
  const { text, hash } = contentAsItIsNow(version)
  await db().formulaVersion.update({
    where: { bakeryId_id: { bakeryId, id: versionId } },
    data: { contentText: text, contentHash: hash, signedAt: now, effectiveAt: now },
  })
  return { formulaId, versionId }
}

/** A draft that can be proposed: two arms, three mixing days of one dough each. */
export function trialContentOf(stores: TrialStores) {
  return {
    kind: 'gain',
    question: 'Does malt make the tin loaf larger?',
    formulaId: stores.formulaId,
    measureId: stores.measureIds['specific-volume'] ?? '',
    margin: 5,
    marginUnit: 'pct',
    confidencePct: 95,
    holdsFor: 'any_day' as 'any_day' | 'these_days',
    blinded: ['measuring'] as ('weighing' | 'baking' | 'measuring' | 'tasting')[],
    mixingDays: 3,
    batchesPerArm: 1,
    piecesPerBatch: 4,
    factor: null as { name: string; levels: string[] } | null,
    heldTotals: ['water', 'fat'],
    scaleId: stores.scaleId as string | null,
    mixerId: stores.mixerId as string | null,
    flourTempC: 20,
    roomTempC: 22,
    tapTempC: 12,
    note: '',
    arms: [
      {
        name: 'malt, 0.6 %',
        onTop: false,
        doses: [
          {
            ingredientId: stores.ids.malt,
            basis: 'pct_flour',
            doseOf: 'product',
            value: 0.6,
            how: 'more',
            insteadOfId: null,
            equalBy: null,
            allOfIt: false,
          },
        ],
      },
      {
        name: 'yoghurt, 10 %',
        onTop: false,
        doses: [
          {
            ingredientId: stores.ids.yoghurt,
            basis: 'pct_flour',
            doseOf: 'product',
            value: 10,
            how: 'more',
            insteadOfId: null,
            equalBy: null,
            allOfIt: false,
          },
        ],
      },
    ],
  }
}
