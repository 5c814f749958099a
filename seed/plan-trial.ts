import type { z } from 'zod'
import { decidePlan } from '../lib/kitchen/trials/decide-plan'
import { draftTrial } from '../lib/kitchen/trials/draft-trial'
import type { draftTrialInput } from '../lib/kitchen/trials/draft-trial.input'
import { getPlan } from '../lib/kitchen/trials/get-plan'
import { getTrial } from '../lib/kitchen/trials/get-trial'
import { proposePlan } from '../lib/kitchen/trials/propose-plan'
import type { BakeryClock } from './bakery-clock'
import type { Crew, PersonKey } from './crew'
import type { SeededFormula } from './sign-off'
import { must } from './must'
import type { DemoStores } from './stores'

/** What the demo's trials are made with. */
export type TrialWork = {
  crew: Crew
  clock: BakeryClock
  stores: DemoStores
  formulas: Record<'whiteTin' | 'wholemealTin' | 'oatLoaf', SeededFormula>
}

type Content = z.input<typeof draftTrialInput>['content']
/** What one trial of the demo says beside what all of them have in common. */
export type DemoQuestion = Pick<
  Content,
  'question' | 'formulaId' | 'note' | 'heldTotals' | 'mixingDays' | 'batchesPerArm' | 'piecesPerBatch'
> & {
  marginPct: number
  confidencePct: number
  arms: readonly { name: string; ingredientId: string; pctFlour: number }[]
}

/** Writes a question down and proposes its plan, as one of the bakers would. */
export async function proposeTrial(
  { crew, stores }: TrialWork,
  who: PersonKey,
  at: Date,
  asked: DemoQuestion,
): Promise<{ trialId: string; revision: number; planHash: string }> {
  const proposer = await crew(who, at)
  const measureId =
    must(await getTrial.call(proposer, { trialId: null })).measures.find(({ code }) => code === 'specific-volume')
      ?.id ?? ''
  const {
    marginPct,
    confidencePct,
    arms,
    question,
    formulaId,
    note,
    heldTotals,
    mixingDays,
    batchesPerArm,
    piecesPerBatch,
  } = asked
  const content: Content = {
    question,
    formulaId,
    note,
    heldTotals,
    mixingDays,
    batchesPerArm,
    piecesPerBatch,
    measureId,
    confidencePct,
    kind: 'gain',
    margin: marginPct,
    marginUnit: 'pct',
    scaleId: stores.equipment.doseScale,
    mixerId: stores.equipment.mixer,
    flourTempC: 20,
    roomTempC: 22,
    tapTempC: null,
    arms: arms.map(({ name, ingredientId, pctFlour }) => ({
      name,
      onTop: false,
      doses: [{ ingredientId, basis: 'pct_flour', doseOf: 'product', value: pctFlour }],
    })),
  }
  const { trialId } = must(await draftTrial.call(proposer, { content }))
  const proposed = must(await proposePlan.call(proposer, { trialId, seenRevision: 1 }))
  return { trialId, revision: proposed.revision, planHash: proposed.planHash }
}

/** The head baker looks at a proposed plan and approves it, with a note. */
export async function approveTrial(
  { crew }: TrialWork,
  at: Date,
  { trialId, revision, planHash }: { trialId: string; revision: number; planHash: string },
  note: string,
): Promise<void> {
  const head = await crew('head', at)
  must(await getPlan.call(head, { trialId }))
  must(await decidePlan.call(head, { trialId, seenRevision: revision, planHash, verdict: 'approved', note }))
}
