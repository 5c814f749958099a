import { afterAll, beforeAll, expect, it } from 'vitest'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { getDecision } from '@/lib/kitchen/decisions/get-decision'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { makeBakery, valueOf } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial } from '../../support/ended-trial'

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

it.each([1, 2])(
  'the plan, the result, the decision and the signature say one cost of a loaf: dough %i',
  async (arm) => {
    const bakery = await makeBakery('Mill Row')
    const trial = await makeEndedTrial(bakery, { spoilt: 1 })
    const { caller } = bakery.owner
    const plan = valueOf(await getPlan.call(caller, { trialId: trial.trialId }))
    const planned = plan.costs && 'arms' in plan.costs ? plan.costs.arms[arm] : undefined
    const decided = valueOf(
      await draftChange.call(bakery.head.caller, {
        trialId: trial.trialId,
        seenRevision: trial.revision,
        reason: 'Larger.',
        armId: trial.armIds[arm],
      }),
    )
    const result = valueOf(await getResult.call(caller, { trialId: trial.trialId })).costs?.arms[arm]
    const seen = valueOf(await getDecision.call(caller, { decisionId: decided.decisionId }))
    const frozen = seen.evidence?.costs?.arms[arm]
    const signed = valueOf(
      await getVersion.call(caller, { formulaId: decided.formulaId, versionId: decided.versionId }),
    ).signing?.cost
    const loaves = [planned?.perPiece, result?.perLoaf, frozen?.perLoaf, seen.change?.cost?.after, signed?.after].map(
      Number,
    )
    const dearer = [
      planned?.differencePerPiece,
      result?.differencePerLoaf,
      frozen?.differencePerLoaf,
      Number(seen.change?.cost?.after) - Number(seen.change?.cost?.before),
      Number(signed?.after) - Number(signed?.before),
    ].map(Number)
    expect(loaves[0]).toBeGreaterThan(0)
    // Percentages of a drafted version have six digits.
    for (const loaf of loaves) expect(Math.abs(loaf / loaves[0]! - 1)).toBeLessThan(1e-6)
    for (const more of dearer) expect(more).toBeCloseTo(dearer[0]!, 6)
  },
)
