import fc from 'fast-check'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { addDay } from '@/lib/kitchen/repairs/add-day'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'
import { firstNotAsPlanned } from '@/lib/kitchen/repairs/first-not-as-planned'
import { swapDoughs } from '@/lib/kitchen/repairs/swap-doughs'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { planOfText } from '@/lib/kitchen/trials/plan-of-text'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { closeAsItIs } from '../../support/close-as-it-is'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { forLong } from '../../support/long'

let database: FreshDatabase

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

/** What somebody may try who wants more doughs of a kind than planned, at any dough, within the seconds of an undo or after them. */
const step = fc.record({
  by: fc.constantFrom(
    'begin',
    'lost',
    'lost',
    'not_baked',
    'not_baked',
    'again',
    'again',
    'day',
    'undo',
    'undo',
    'swap',
  ),
  which: fc.nat(12),
  other: fc.nat(5),
  later: fc.constantFrom(1000, 1000, 11_000),
})
type Step = typeof step extends fc.Arbitrary<infer Drawn> ? Drawn : never

/** The same dough each time, so that a game begins where something can be gained. */
const at = (by: Step['by']): Step => ({ by, which: 0, other: 1, later: 1000 })
const openings: Step[][] = [
  [at('not_baked'), at('again'), at('undo')],
  [at('begin'), at('lost'), at('day'), at('undo'), at('again')],
  [at('swap'), at('not_baked'), at('undo'), at('again'), at('day')],
]

const doughsOf = ({ bakeryId }: TestBakery, trialId: string) =>
  db().batch.findMany({
    where: { bakeryId, trialId },
    include: { arm: true, mixingDay: true },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })
type Dough = Awaited<ReturnType<typeof doughsOf>>[number]

/** Does a step, and says whether it was done. */
async function doStep(each: Step, bakery: TestBakery, { trialId }: ApprovedTrial, doughs: Dough[], now: Date) {
  const caller = callerOf(bakery.head.sessionSecret, now)
  const [dough, other] = [doughs[each.which % doughs.length]!, doughs[each.other % doughs.length]!]
  const seen = { batchId: dough.id, seenRevision: dough.revision }
  switch (each.by) {
    case 'begin':
      return beginBatch.call(caller, { ...seen, cleanDownDone: true, swapWhy: 'in the test' })
    case 'lost':
    case 'not_baked':
      return moveBatch.call(caller, { ...seen, to: each.by, why: 'I did not like it' })
    case 'again':
      return bakeAgain.call(caller, { batchId: dough.id })
    case 'day':
      return addDay.call(caller, { trialId, number: dough.mixingDay.number })
    case 'undo':
      return undoMove.call(caller, seen)
    case 'swap': {
      const { trials } = valueOf(await getShift.call(caller, { after: null }))
      const seenTurn = trials.rows[0]!.batches.find(({ id }) => id === dough.id)!.turn
      return swapDoughs.call(caller, { batchId: dough.id, seenTurn, otherId: other.id, why: 'in the test' })
    }
    default:
      throw new Error(each.by)
  }
}

it('no sequence of losses, repairs and second thoughts makes more doughs of a kind than planned, nor any that cannot be closed', async () => {
  const done = new Map<string, number>()
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 9, maxLength: 20 }), async (steps) => {
      const bakery = await makeBakery('Mill Row')
      const trial = await makeApprovedTrial(bakery, { arms: 2, days: 2 })
      const { planText, planHash } = await db().trial.findFirstOrThrow({ where: { id: trial.trialId } })
      const plan = planOfText(planText!, planHash!)
      let now = testNow.getTime()
      for (const each of [...(openings[steps.length % openings.length] ?? []), ...steps]) {
        now += each.later
        const result = await doStep(each, bakery, trial, await doughsOf(bakery, trial.trialId), new Date(now))
        if (result.ok) done.set(each.by, (done.get(each.by) ?? 0) + 1)
        const after = await doughsOf(bakery, trial.trialId)
        const standing = new Map<string, number>()
        for (const { arm, mixingDay, state } of after) {
          if (isOutState(state)) continue
          const place = `${mixingDay.number} ${arm.position}`
          standing.set(place, (standing.get(place) ?? 0) + 1)
        }
        expect(Math.max(0, ...standing.values())).toBeLessThanOrEqual(1)
        const asClosed = after.map(({ arm, mixingDay, ...dough }) => ({
          ...dough,
          arm: arm.position,
          day: mixingDay.number,
        }))
        expect(firstNotAsPlanned(asClosed, plan)).toBeNull()
        const rack = valueOf(await getShift.call(callerOf(bakery.head.sessionSecret, new Date(now)), { after: null }))
        for (const day of new Set(asClosed.map((dough) => dough.day))) {
          const turns = rack.trials.rows[0]!.batches.filter(({ dayNumber }) => dayNumber === day).map(
            ({ turn }) => turn,
          )
          expect(turns).toEqual(turns.map((_, i) => i + 1))
        }
      }
      await closeAsItIs(bakery, trial.trialId, new Date(now), 'stopped', 'over')
    }),
    { numRuns: forLong(9, 200), seed: 20261203 },
  )
  // The game was played: everything was done, and more than once.
  for (const by of ['begin', 'lost', 'not_baked', 'again', 'day', 'undo', 'swap'])
    expect([by, done.get(by) ?? 0]).not.toEqual([by, 0])
}, 180_000)
