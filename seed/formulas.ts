import type { z } from 'zod'
import type { Caller } from '../lib/kitchen/caller'
import { changeDraft } from '../lib/kitchen/formulas/change-draft'
import { draftFormula } from '../lib/kitchen/formulas/draft-formula'
import type { draftFormulaInput } from '../lib/kitchen/formulas/draft-formula.input'
import { draftVersion } from '../lib/kitchen/formulas/draft-version'
import type { PersonKey } from './crew'
import { must } from './must'
import { signOff, type SeededFormula } from './sign-off'

/** The ingredients that the invented formulas are made of. */
export type FormulaIngredientKey =
  | 'breadFlour'
  | 'wholemealFlour'
  | 'ryeFlour'
  | 'water'
  | 'salt'
  | 'freshYeast'
  | 'butter'
  | 'milk'
  | 'skimMilkPowder'
  | 'honey'
  | 'maltFlour'
  | 'sunflowerOil'
  | 'rolledOats'
  | 'sugar'

type DraftedFormula = z.input<typeof draftFormulaInput>
type Stage = DraftedFormula['stages'][number]
type StageOf = (kind: Stage['kind'], name: string, lines: Partial<Record<FormulaIngredientKey, number>>) => Stage

/**
 * Writes three invented formulas by the real commands: drafted by the head baker, signed off by the owner, in force
 * for months. The white tin has a second version. They are nobody's formulas and nobody bakes them.
 * @param as somebody, signed in on a day so long ago
 * @returns each formula with the version that is in production
 */
export async function seedFormulas(
  as: (who: PersonKey, daysAgo: number) => Promise<Caller>,
  ingredientIds: Record<FormulaIngredientKey, string>,
): Promise<Record<'whiteTin' | 'wholemealTin' | 'oatLoaf', SeededFormula>> {
  const stage: StageOf = (kind, name, lines) => ({
    kind,
    name,
    lines: Object.entries(lines).map(([key, pctFlour]) => ({
      ingredientId: ingredientIds[key as FormulaIngredientKey],
      pctFlour,
    })),
  })

  // In the order of their days, so that the record reads as it would have been written.
  const white = whiteTin(stage)
  const whiteTinFirst = must(await draftFormula.call(await as('head', 412), white))
  await signOff(await as('owner', 411), whiteTinFirst)
  const wholemeal = must(await draftFormula.call(await as('head', 398), wholemealTin(stage)))
  await signOff(await as('owner', 397), wholemeal)
  const oats = must(await draftFormula.call(await as('head', 290), oatLoaf(stage)))
  await signOff(await as('owner', 288), oats)
  const whiteTinNow = must(
    await draftVersion.call(await as('head', 163), { fromVersionId: whiteTinFirst.versionId, reason: maltReason }),
  )
  const { name: _, ...content } = white
  must(
    await changeDraft.call(await as('head', 163), {
      versionId: whiteTinNow.versionId,
      seenRevision: 1,
      ...content,
      reason: maltReason,
      stages: [maltedDough(stage)],
    }),
  )
  await signOff(await as('owner', 160), whiteTinNow)
  return { whiteTin: whiteTinNow, wholemealTin: wholemeal, oatLoaf: oats }
}

const maltReason =
  'The new harvest’s flour leaves the crust pale by Thursday’s deliveries. A little diastatic malt flour, as the miller advised.'

function whiteTin(stage: StageOf): DraftedFormula {
  return {
    name: 'Osier white tin',
    reason: 'What we bake today, written down.',
    pieces: 24,
    scalingMassG: 880,
    doughLossPct: 1.5,
    doughTempC: 26,
    mixTimeMin: 11,
    bulkTimeMin: 45,
    proofTimeMin: 55,
    bakeTempC: 225,
    bakeTimeMin: 34,
    method:
      'All in, four minutes slow and seven fast, until it stretches to a thin skin.\nBulk covered, one fold at half time. Scale, round, rest ten minutes, mould and tin.\nProof to a finger below the rim. Steam at loading, damper open for the last five minutes.',
    stages: [
      stage('final_dough', '', {
        breadFlour: 100,
        water: 60.5,
        salt: 1.8,
        freshYeast: 2.4,
        butter: 2,
        skimMilkPowder: 2,
        sugar: 1,
      }),
    ],
  }
}

function maltedDough(stage: StageOf): Stage {
  return stage('final_dough', '', {
    breadFlour: 100,
    water: 60.5,
    salt: 1.8,
    freshYeast: 2.3,
    butter: 2,
    skimMilkPowder: 2,
    sugar: 0.8,
    maltFlour: 0.3,
  })
}

function wholemealTin(stage: StageOf): DraftedFormula {
  return {
    name: 'Towpath wholemeal tin',
    reason: 'What we bake today, written down.',
    pieces: 16,
    scalingMassG: 920,
    doughLossPct: 1.5,
    doughTempC: 25.5,
    mixTimeMin: 9,
    bulkTimeMin: 60,
    proofTimeMin: 50,
    bakeTempC: 220,
    bakeTimeMin: 38,
    method:
      'Poolish the evening before, twelve to fourteen hours at 18 °C, until it just begins to sink.\nSix minutes slow, three fast. Two folds in bulk. Mould loosely: the bran cuts a tight skin.',
    stages: [
      stage('pre_ferment', 'Poolish', { breadFlour: 25, water: 25, freshYeast: 0.05 }),
      stage('final_dough', '', {
        wholemealFlour: 60,
        breadFlour: 15,
        water: 44,
        salt: 1.9,
        freshYeast: 1.4,
        honey: 2,
        sunflowerOil: 2,
      }),
    ],
  }
}

function oatLoaf(stage: StageOf): DraftedFormula {
  return {
    name: 'Lock-keeper’s oat loaf',
    reason: 'What we bake on Fridays and Saturdays, written down.',
    pieces: 14,
    scalingMassG: 760,
    doughLossPct: 2,
    doughTempC: 26,
    mixTimeMin: 10,
    bulkTimeMin: 75,
    proofTimeMin: 60,
    bakeTempC: 230,
    bakeTimeMin: 40,
    method:
      'Boiling water over the oats, stir, cover, cool below 30 °C before it goes in.\nSeven minutes slow, three fast, the scald in the last two minutes. Two folds. Roll in oats, proof seam up.',
    stages: [
      stage('scald', 'Oat scald', { rolledOats: 12, water: 30 }),
      stage('final_dough', '', {
        breadFlour: 80,
        wholemealFlour: 12,
        ryeFlour: 8,
        water: 44,
        milk: 8,
        salt: 2,
        freshYeast: 1.8,
        butter: 2.5,
      }),
    ],
  }
}
