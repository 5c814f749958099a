import path from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest'
import { db, type Tx } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/transaction'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { closePool } from '@/lib/kitchen/heavy/in-pool'
import type { Result } from '@/lib/kitchen/result'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { lockTrial } from '@/lib/kitchen/trials/lock-trial'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'
import { trialContentOf, type TrialStores } from '../../support/trials'
import { untilSomebodyWaits } from '../../support/until-somebody-waits'

const unruly = path.resolve(import.meta.dirname, '../../support/unruly-worker.mjs')

let database: FreshDatabase
let bakery: TestBakery
let stores: TrialStores
let ended: EndedTrial
let draft: { trialId: string; seenRevision: number }

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(async () => {
  await closePool()
  await database.drop()
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  ended = await makeEndedTrial(bakery)
  stores = ended.stores
  const { trialId } = valueOf(await draftTrial.call(bakery.early.caller, { content: trialContentOf(stores) }))
  draft = { trialId, seenRevision: 1 }
})

const decided = () => ({ trialId: ended.trialId, seenRevision: ended.revision, reason: 'Larger.' })
const change = () => draftChange.call(bakery.head.caller, { ...decided(), armId: ended.armIds[1] })
const keep = () => keepFormula.call(bakery.head.caller, decided())
const propose = () => proposePlan.call(bakery.early.caller, draft)

/** Whatever any of these would have left behind. */
async function traces() {
  const { bakeryId } = bakery
  const [decisions, evidence, versions, lines, record, trial] = await Promise.all([
    db().decision.count({ where: { bakeryId } }),
    db().evidence.count({ where: { bakeryId } }),
    db().formulaVersion.count({ where: { bakeryId } }),
    db().armLine.count({ where: { bakeryId, arm: { trialId: draft.trialId } } }),
    db().auditEntry.count({ where: { bakeryId } }),
    db().trial.findFirstOrThrow({
      where: { bakeryId, id: draft.trialId },
      select: { state: true, revision: true, planText: true, seed: true },
    }),
  ])
  return { decisions, evidence, versions, lines, record, trial }
}

const works: readonly [string, () => Promise<Result<unknown>>, () => string][] = [
  ['a change is drafted', change, () => ended.trialId],
  ['a formula is kept', keep, () => ended.trialId],
  ['a plan is proposed', propose, () => draft.trialId],
]

describe('what was worked out before the transaction is kept only if everything that it rests on is still the same', () => {
  /** Calls a command that works something out and then waits for its trial; meanwhile somebody else changes something. */
  async function overtaken(
    call: () => Promise<Result<unknown>>,
    trialId: string,
    byThen: (tx: Tx) => Promise<unknown>,
  ): Promise<Result<unknown>> {
    const { called } = await inTransaction(async (tx) => {
      await lockTrial(tx, bakery.bakeryId, trialId)
      const called = call()
      await untilSomebodyWaits(database)
      await byThen(tx)
      return { called }
    })
    return called
  }

  /** Past every guard, as only the database's own superuser can: what is closed takes no reading any more. */
  async function changeALoaf() {
    await connected(database.superUrl, (superuser) =>
      superuser.query(
        `SET session_replication_role = replica; UPDATE reading SET value = value + 8 WHERE id = (
           SELECT id FROM reading WHERE trial_id = '${ended.trialId}' AND measure_id = '${stores.measureIds['loaf-volume']}' ORDER BY id LIMIT 1)`,
      ),
    )
  }

  it.each(works.slice(0, 2))('%s, and a loaf has another volume', async (_, call, trialId) => {
    const before = await traces()
    const result = await overtaken(call, trialId(), changeALoaf)
    expect(refusalOf(result)).toBe('seal-broken')
    expect(await traces()).toEqual(before)
  })

  it('a plan is proposed, and the stores say otherwise what an ingredient is made of', async () => {
    const before = await traces()
    const result = await overtaken(propose, draft.trialId, (tx) =>
      tx.ingredientFigure.updateMany({
        where: { bakeryId: bakery.bakeryId, ingredientId: stores.ids.yoghurt, figure: 'water' },
        data: { gPer100G: 80 },
      }),
    )
    expect(refusalOf(result)).toBe('stale-moved-on')
    expect(await traces()).toEqual(before)
    valueOf(await propose())
  })

  it.each(works)('%s, and nothing that it rests on changes', async (_, call, trialId) => {
    valueOf(
      await overtaken(call, trialId(), (tx) =>
        tx.ingredient.updateMany({
          where: { bakeryId: bakery.bakeryId, id: stores.ids.oil },
          data: { revision: { increment: 1 } },
        }),
      ),
    )
  })
})

describe('while a worker is at it', () => {
  let limit: AbortController
  beforeEach(async () => {
    await closePool()
    vi.stubEnv('EVENDOUGH_WORKER', unruly)
    limit = new AbortController()
    vi.spyOn(AbortSignal, 'timeout').mockReturnValue(limit.signal)
  })
  afterEach(async () => {
    vi.restoreAllMocks()
    vi.unstubAllEnvs()
    await closePool()
  })

  const views: typeof works = [
    [
      'a result is looked at',
      () => getResult.call(bakery.early.caller, { trialId: ended.trialId }),
      () => ended.trialId,
    ],
    [
      'the plan of a draft is looked at',
      () => getPlan.call(bakery.early.caller, { trialId: draft.trialId }),
      () => draft.trialId,
    ],
  ]

  it.each([...works, ...views])(
    'no transaction is open, and at its limit nothing is kept and words say why: %s',
    async (_, call) => {
      const before = await traces()
      const called = call()
      await vi.waitFor(() => expect(AbortSignal.timeout).toHaveBeenCalled(), { timeout: 10_000 })
      const open = await connected(database.superUrl, (client) =>
        client.query(`SELECT query FROM pg_stat_activity WHERE datname = $1 AND state LIKE 'idle in transaction%'`, [
          database.name,
        ]),
      )
      expect(open.rows).toEqual([])
      limit.abort()
      expect(refusalOf(await called)).toBe('took-too-long')
      expect(await traces()).toEqual(before)
    },
  )
})
