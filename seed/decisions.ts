import { draftChange } from '../lib/kitchen/decisions/draft-change'
import { getResult } from '../lib/kitchen/amendments/get-result'
import type { BakeryClock } from './bakery-clock'
import type { Crew } from './crew'
import type { SeededFormula } from './sign-off'
import { must } from './must'
import { signOff } from './sign-off'
import type { ClosedTrial } from './trials'

type Work = { crew: Crew; clock: BakeryClock }

/** From 40 to 36 days ago: the head baker drafts the change and signs it, the owner looks at the cost and signs it too. */
export async function decideOnWholemeal(work: Work, trial: ClosedTrial): Promise<void> {
  const change = await draftFrom(
    work,
    work.clock.on(40, '12:40'),
    trial,
    'Clearly larger on every mixing day, and softer on the second day. Invented, as the trial is.',
  )
  await signOff(await work.crew('head', work.clock.on(38, '12:05')), change)
  await signOff(await work.crew('owner', work.clock.on(36, '15:20')), change)
}

/** From 13 to 11 days ago: drafted and signed by the head baker; the owner's signature is still to come. */
export async function decideOnOats(work: Work, trial: ClosedTrial): Promise<void> {
  const change = await draftFrom(
    work,
    work.clock.on(13, '12:20'),
    trial,
    'The gluten opens it up on all mixing days. Honey showed nothing. Invented, as the trial is.',
  )
  await signOff(await work.crew('head', work.clock.on(11, '12:10')), change)
}

/** Drafts a formula change from the first test dough of a closed trial, as the head baker. */
async function draftFrom(
  { crew }: Work,
  at: Date,
  { trialId, armIds }: ClosedTrial,
  reason: string,
): Promise<SeededFormula> {
  const head = await crew('head', at)
  const { trial } = must(await getResult.call(head, { trialId }))
  return must(await draftChange.call(head, { trialId, armId: armIds[1], seenRevision: trial.revision, reason }))
}
