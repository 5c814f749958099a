import { db } from '../lib/db/client'
import { decideAmendment } from '../lib/kitchen/amendments/decide-amendment'
import { proposeAmendment } from '../lib/kitchen/amendments/propose-amendment'
import { closeTrial } from '../lib/kitchen/results/close-trial'
import { getResult } from '../lib/kitchen/amendments/get-result'
import { bakeMixingDay, oneAfterAnother } from './bake-mixing-day'
import { oatTrial, whiteTinTrial, wholemealTrial, type BakedTrial } from './baked-trials'
import { minuteMs } from './bakery-clock'
import { must } from './must'
import { approveTrial, proposeTrial, type TrialWork } from './plan-trial'

/** A closed trial, for whoever decides from it; arms by position, the control first. */
export type ClosedTrial = { trialId: string; armIds: string[] }

/** From 56 to 41 days ago: closed, one arm with a real gain. Its question and doses are made up, as all of them here. */
export async function seedWholemealTrial(work: TrialWork): Promise<ClosedTrial> {
  const { clock, stores, formulas } = work
  const plan = await proposeTrial(work, 'late', clock.on(56, '13:20'), {
    ...wholemealTrial,
    question: 'Does buttermilk or honey lift the wholemeal tin enough to pay for itself?',
    formulaId: formulas.wholemealTin.formulaId,
    heldTotals: ['water'],
    note: 'Invented. Customers say it is heavy by the second day.',
    arms: [
      { name: 'buttermilk 8 %', ingredientId: stores.ingredients.buttermilk, pctFlour: 8 },
      { name: 'honey 4 % more', ingredientId: stores.ingredients.honey, pctFlour: 4 },
    ],
  })
  await approveTrial(
    work,
    clock.on(55, '12:40'),
    plan,
    'Buttermilk last each morning, as the plan has it, and the bowl washed after.',
  )
  await bakeShifts(work, wholemealTrial, plan.trialId)
  const closed = await closeBaked(work, clock.on(41, '11:30'), plan.trialId)
  await amendLoaf(work, closed.trialId, { by: clock.on(41, '13:20'), decided: clock.on(41, '14:05') })
  return closed
}

/** From 29 to 14 days ago: closed, one arm with a real gain and one that does nothing. */
export async function seedOatTrial(work: TrialWork): Promise<ClosedTrial> {
  const { clock, stores, formulas } = work
  const plan = await proposeTrial(work, 'early', clock.on(29, '12:50'), {
    ...oatTrial,
    question: 'Does wheat gluten, or honey, open the oat loaf up?',
    formulaId: formulas.oatLoaf.formulaId,
    heldTotals: ['water'],
    note: 'Invented. It sits low on Saturdays, when the oats are scalded late.',
    arms: [
      { name: 'wheat gluten 1.5 %', ingredientId: stores.ingredients.gluten, pctFlour: 1.5 },
      { name: 'honey 2 %', ingredientId: stores.ingredients.honey, pctFlour: 2 },
    ],
  })
  await approveTrial(work, clock.on(28, '12:15'), plan, 'Weigh the gluten under the hood, with a mask on.')
  await bakeShifts(work, oatTrial, plan.trialId)
  return closeBaked(work, clock.on(14, '11:45'), plan.trialId)
}

/** From 9 days ago until now: one that is being baked, and one that waits for approval. */
export async function seedOpenTrials(work: TrialWork): Promise<void> {
  const { clock, stores, formulas } = work
  const plan = await proposeTrial(work, 'late', clock.on(9, '13:10'), {
    ...whiteTinTrial,
    question: 'Does more butter, or olive oil in the dough, give the white tin a taller loaf?',
    formulaId: formulas.whiteTin.formulaId,
    heldTotals: ['water'],
    note: 'Invented. The school kitchen asks for a loaf that fills the toaster.',
    arms: [
      { name: 'butter 2 % more', ingredientId: stores.ingredients.butter, pctFlour: 2 },
      { name: 'olive oil 2 %', ingredientId: stores.ingredients.oliveOil, pctFlour: 2 },
    ],
  })
  await approveTrial(
    work,
    clock.on(8, '12:30'),
    plan,
    'Between the second and third oven. Three loaves a dough are enough.',
  )
  await bakeShifts(work, whiteTinTrial, plan.trialId)

  await proposeTrial(work, 'early', clock.on(1, '13:00'), {
    question: 'Does more malt flour, or skimmed milk powder, give the white tin volume that is worth its price?',
    formulaId: formulas.whiteTin.formulaId,
    marginPct: 4,
    confidencePct: 95,
    mixingDays: 3,
    batchesPerArm: 2,
    piecesPerBatch: 6,
    heldTotals: ['water'],
    note: 'Invented.',
    arms: [
      { name: 'malt flour 0.3 % more', ingredientId: stores.ingredients.maltFlour, pctFlour: 0.3 },
      { name: 'malt flour 0.6 % more', ingredientId: stores.ingredients.maltFlour, pctFlour: 0.6 },
      { name: 'skimmed milk powder 3 % more', ingredientId: stores.ingredients.skimMilkPowder, pctFlour: 3 },
    ],
  })
  await bakeUntilNow(work, plan.trialId)
}

/** The mixing days of a trial that are over. */
async function bakeShifts({ crew, clock }: TrialWork, trial: BakedTrial, trialId: string): Promise<void> {
  const doughs = trial.batchesPerArm * trial.truth.gainShares.length
  for (const [i, { daysAgo, start, mixes, measures }] of trial.shifts.entries()) {
    await bakeMixingDay(crew, {
      trial,
      trialId,
      day: i + 1,
      mixes,
      measures,
      startsAt: oneAfterAnother(clock.on(daysAgo, start), doughs),
    })
  }
}

/** How long ago the doughs of the unfinished mixing day began: two are measured, one cools, one is in work; others wait. */
const begunMinAgo = [315, 280, 215, 75]
/**
 * The mixing day that is half done, laid back from now, because the demo is made at any hour: at five past midnight its
 * first doughs are of the evening before.
 */
async function bakeUntilNow({ crew, clock: { now, on } }: TrialWork, trialId: string): Promise<void> {
  const before = (minutes: number) => new Date(now.getTime() - minutes * minuteMs)
  const [mixes, measures] = now < on(0, '13:00') ? (['early', 'late'] as const) : (['late', 'early'] as const)
  const day = whiteTinTrial.shifts.length + 1
  await bakeMixingDay(crew, {
    trial: whiteTinTrial,
    trialId,
    day,
    mixes,
    measures,
    startsAt: begunMinAgo.map(before),
    until: now,
  })
}

/** A loaf's weight that was read off wrongly comes out after the closing; the head baker looks at the paper and accepts it. */
async function amendLoaf({ crew }: TrialWork, trialId: string, at: { by: Date; decided: Date }): Promise<void> {
  const read = await db().reading.findFirstOrThrow({
    where: {
      trialId,
      piece: 3,
      measure: { code: 'loaf-mass' },
      batch: { arm: { position: 1 }, mixingDay: { number: 2 } },
    },
    select: { batchId: true, measureId: true, value: true },
  })
  const { amendmentId } = must(
    await proposeAmendment.call(await crew('early', at.by), {
      trialId,
      what: 'another',
      doughId: read.batchId,
      measureId: read.measureId,
      piece: 3,
      repeat: 1,
      value: String(read.value + 9),
      reason: 'The sheet from the scale says so; the last digit was read as 0.',
    }),
  )
  const { hash } = await db().amendment.findFirstOrThrow({ where: { id: amendmentId }, select: { hash: true } })
  must(
    await decideAmendment.call(await crew('head', at.decided), {
      amendmentId,
      seenHash: hash,
      accept: true,
      note: 'The sheet is in the folder.',
    }),
  )
}

/** The head baker looks at the result of a trial whose doughs are all in, and closes it. */
async function closeBaked({ crew }: TrialWork, at: Date, trialId: string): Promise<ClosedTrial> {
  const head = await crew('head', at)
  const { trial } = must(await getResult.call(head, { trialId }))
  must(await closeTrial.call(head, { trialId, seenRevision: trial.revision, early: false, reason: '' }))
  const arms = await db().arm.findMany({ where: { trialId }, select: { id: true }, orderBy: { position: 'asc' } })
  return { trialId, armIds: arms.map(({ id }) => id) }
}
