import { decidePlan } from '../lib/kitchen/trials/decide-plan'
import { draftTrial } from '../lib/kitchen/trials/draft-trial'
import { getPlan } from '../lib/kitchen/trials/get-plan'
import { getTrial } from '../lib/kitchen/trials/get-trial'
import { proposePlan } from '../lib/kitchen/trials/propose-plan'
import type { SeededFormula } from './formulas'
import { must } from './must'
import type { CallersAt } from './seed-demo'
import type { DemoStores } from './stores'

type Formulas = Record<'whiteTin' | 'wholemealTin' | 'oatLoaf', SeededFormula>

/**
 * Two invented trials of the shift bakers: one that the head baker approved, to be baked next, and one that waits
 * for approval. Their questions and doses are made up; nobody bakes them.
 */
export async function seedTrials(at: CallersAt, { ingredients, equipment }: DemoStores, formulas: Formulas): Promise<void> {
  const usual = {
    kind: 'gain',
    marginUnit: 'pct',
    confidencePct: 95,
    scaleId: equipment.doseScale,
    mixerId: equipment.mixer,
    flourTempC: 20,
    roomTempC: 22,
    tapTempC: 13,
  }
  const dose = (ingredientId: string, value: number) => ({ ingredientId, basis: 'pct_flour', doseOf: 'product', value })

  const sixAgo = await at(6)
  const measureId = must(await getTrial.call(sixAgo.late, { trialId: null })).measures.find(({ code }) => code === 'specific-volume')?.id
  const approved = must(
    await draftTrial.call(sixAgo.late, {
      content: {
        ...usual,
        question: 'Does buttermilk or honey lift the wholemeal tin enough to pay for itself?',
        formulaId: formulas.wholemealTin.formulaId,
        measureId,
        margin: 4,
        mixingDays: 4,
        batchesPerArm: 1,
        piecesPerBatch: 4,
        heldTotals: ['dough_mass', 'water', 'sugars'],
        note: 'Invented. Customers say it is heavy by the second day.',
        arms: [
          { name: 'buttermilk 8 %', onTop: false, doses: [dose(ingredients.buttermilk, 8)] },
          { name: 'honey 4 % more', onTop: false, doses: [dose(ingredients.honey, 4)] },
        ],
      },
    }),
  )
  const plan = must(await proposePlan.call(sixAgo.late, { trialId: approved.trialId, seenRevision: 1 }))
  const fiveAgo = await at(5)
  must(await getPlan.call(fiveAgo.head, { trialId: approved.trialId }))
  must(
    await decidePlan.call(fiveAgo.head, {
      trialId: approved.trialId,
      seenRevision: plan.revision,
      planHash: plan.planHash,
      verdict: 'approved',
      note: 'From Tuesday, between the second and third oven.',
      language: 'en',
    }),
  )

  const yesterday = await at(1)
  const waiting = must(
    await draftTrial.call(yesterday.early, {
      content: {
        ...usual,
        question: 'Does more malt flour, or skimmed milk powder, give the white tin volume that is worth its price?',
        formulaId: formulas.whiteTin.formulaId,
        measureId,
        margin: 4,
        mixingDays: 3,
        batchesPerArm: 2,
        piecesPerBatch: 6,
        heldTotals: ['dough_mass', 'water', 'fat'],
        note: 'Invented.',
        arms: [
          { name: 'malt flour 0.3 % more', onTop: false, doses: [dose(ingredients.maltFlour, 0.3)] },
          { name: 'malt flour 0.6 % more', onTop: false, doses: [dose(ingredients.maltFlour, 0.6)] },
          { name: 'skimmed milk powder 3 % more', onTop: false, doses: [dose(ingredients.skimMilkPowder, 3)] },
        ],
      },
    }),
  )
  must(await proposePlan.call(yesterday.early, { trialId: waiting.trialId, seenRevision: 1 }))
}
