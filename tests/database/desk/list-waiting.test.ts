import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { v7 as uuid } from 'uuid'
import { db } from '@/lib/db/client'
import { decideAmendment } from '@/lib/kitchen/amendments/decide-amendment'
import { proposeNotCounting } from '@/lib/kitchen/amendments/propose-not-counting'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import { makeStation } from '@/lib/kitchen/stations/make-station'
import { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { draftVersion } from '@/lib/kitchen/formulas/draft-version'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { changeDraftTrial } from '@/lib/kitchen/trials/change-draft-trial'
import { dateMixingDays } from '@/lib/kitchen/trials/date-mixing-days'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { stopTrial } from '@/lib/kitchen/trials/stop-trial'
import { withdrawPlan } from '@/lib/kitchen/trials/withdraw-plan'
import { makeApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery, type TestPerson } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial } from '../../support/ended-trial'
import { makeTrialStores, trialContentOf } from '../../support/trials'
import { statementsOf } from '@/tests/support/statements-of'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
})

const waits = async (person: TestPerson) => valueOf(await listWaiting.call(person.caller, {}))
type Kind = Exclude<keyof Awaited<ReturnType<typeof waits>>, 'brokenRecord' | 'notAnchored'>
/** How many of a kind wait for the owner, the head baker and the two of the shift; null where they are not asked. */
const counts = async (kind: Kind) => {
  const all = await Promise.all([bakery.owner, bakery.head, bakery.early, bakery.late].map(waits))
  return all.map((each) => each[kind]?.count ?? null)
}
/** An approved trial whose first dough is begun, with an entry that came too late for its place. */
async function putAside() {
  const trial = await makeApprovedTrial(bakery)
  const batchId = trial.batches[0]!.batchId
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
  const reading = (value: string) => ({
    kind: 'reading',
    id: uuid(),
    batchId,
    measureId: trial.measures['loaf-mass'],
    piece: 1,
    repeat: 1,
    value,
    unit: 'g',
    takenAt: testNow.toISOString(),
  })
  const entries = [reading('412.5'), reading('430')]
  const aside = valueOf(await takeEntries.call(bakery.early.caller, { entries })).entries[1]
  if (aside?.outcome !== 'aside') throw new Error(`not aside: ${aside?.outcome}`)
  return { trial, entry: { entryId: aside.id, hash: aside.hash } }
}
const nothing = { rows: [], count: 0, isAtLeast: false }

async function propose(by: TestPerson, content: object) {
  const { trialId } = valueOf(await draftTrial.call(by.caller, { content }))
  return valueOf(await proposePlan.call(by.caller, { trialId, seenRevision: 1 }))
}
const decide = (
  by: TestPerson,
  { trialId, revision, planHash }: Awaited<ReturnType<typeof propose>>,
  verdict = 'approved',
) =>
  decidePlan.call(by.caller, {
    trialId,
    seenRevision: revision,
    planHash,
    verdict,
    note: verdict === 'approved' ? '' : 'Too few loaves.',
  })

describe('what waits', () => {
  it('is nothing in a bakery where nothing does, and only what a role may do is asked at all', async () => {
    const all = {
      brokenRecord: null,
      notAnchored: null,
      underWay: nothing,
      toMix: nothing,
      toSettle: nothing,
      toConfirm: nothing,
      sentBack: nothing,
      toApprove: nothing,
      toSign: nothing,
      toAmend: nothing,
      toClose: nothing,
      toDecide: nothing,
      stations: nothing,
    }
    expect(await waits(bakery.owner)).toEqual(all)
    // What somebody else did with tablets is told to the owner alone.
    expect(await waits(bakery.head)).toEqual({ ...all, stations: null })
    expect(await waits(bakery.early)).toEqual({
      ...all,
      stations: null,
      toSettle: null,
      toConfirm: null,
      toApprove: null,
      toSign: null,
      toAmend: nothing,
      toClose: null,
      toDecide: null,
    })
  })

  it('is a plan for each who may approve it, until one of them decides', async () => {
    const content = trialContentOf(await makeTrialStores(bakery))
    const proposed = await propose(bakery.early, content)
    expect(await counts('toApprove')).toEqual([1, 1, null, null])
    expect((await waits(bakery.head)).toApprove?.rows).toEqual([
      {
        trialId: proposed.trialId,
        number: 1,
        question: content.question,
        formula: expect.stringMatching(/^Tin loaf/),
        since: testNow,
      },
    ])
    valueOf(await decide(bakery.head, proposed))
    expect(await counts('toApprove')).toEqual([0, 0, null, null])
  })

  it('is no plan for whoever proposed or wrote it, as long as somebody else can decide', async () => {
    const content = trialContentOf(await makeTrialStores(bakery))
    const own = await propose(bakery.head, content)
    expect(await counts('toApprove')).toEqual([1, 0, null, null])
    expect(refusalOf(await decide(bakery.head, own))).toBe('own-plan')
    const { revision } = valueOf(
      await withdrawPlan.call(bakery.head.caller, { trialId: own.trialId, seenRevision: own.revision }),
    )
    expect(await counts('toApprove')).toEqual([0, 0, null, null])
    valueOf(
      await changeDraftTrial.call(bakery.owner.caller, {
        trialId: own.trialId,
        seenRevision: revision,
        content: { ...content, question: 'And with less?' },
      }),
    )
    valueOf(await proposePlan.call(bakery.head.caller, { trialId: own.trialId, seenRevision: revision + 1 }))
    // Proposed by one and written by the other of the only two who may: the writer is let, for want of a second.
    expect(await counts('toApprove')).toEqual([1, 0, null, null])
  })

  it('is one’s own plan where people work alone', async () => {
    const proposed = await propose(bakery.head, trialContentOf(await makeTrialStores(bakery)))
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { worksAlone: true } })
    expect(await counts('toApprove')).toEqual([1, 1, null, null])
    valueOf(await decide(bakery.head, proposed))
  })

  it('is a plan that was sent back, for its proposer alone, until it is proposed again', async () => {
    const proposed = await propose(bakery.early, trialContentOf(await makeTrialStores(bakery)))
    expect(await counts('sentBack')).toEqual([0, 0, 0, 0])
    valueOf(await decide(bakery.owner, proposed, 'sent_back'))
    expect(await counts('sentBack')).toEqual([0, 0, 1, 0])
    expect(await counts('toApprove')).toEqual([0, 0, null, null])
    valueOf(
      await proposePlan.call(bakery.early.caller, { trialId: proposed.trialId, seenRevision: proposed.revision + 1 }),
    )
    expect(await counts('sentBack')).toEqual([0, 0, 0, 0])
    expect(await counts('toApprove')).toEqual([1, 1, null, null])
  })

  it('is a mixing day that is due and has doughs left, and no day to come', async () => {
    const proposed = await propose(bakery.early, trialContentOf(await makeTrialStores(bakery)))
    valueOf(await decide(bakery.head, proposed))
    const days = [
      [1, '2026-03-02'],
      [2, '2026-03-03'],
    ] as const
    valueOf(
      await dateMixingDays.call(bakery.head.caller, {
        trialId: proposed.trialId,
        days: days.map(([number, day]) => ({ number, seen: null, day })),
      }),
    )
    expect(await counts('toMix')).toEqual([1, 1, 1, 1])
    expect((await waits(bakery.early)).toMix?.rows).toEqual([
      { dayNumber: 1, day: '2026-03-02', doughs: 3, number: 1, formula: expect.any(String) },
    ])
    // Where the bakery is, it is still the day before.
    const moved = { bakeryId: bakery.bakeryId }
    await db().bakery.update({ where: moved, data: { timeZone: 'Pacific/Honolulu' } })
    expect(await counts('toMix')).toEqual([0, 0, 0, 0])
    await db().bakery.update({ where: moved, data: { timeZone: 'Europe/Berlin' } })
    // Nor has its work begun where the day turns at six: the tests' clock says five there.
    await db().bakery.update({ where: moved, data: { dayTurnsAtH: 6 } })
    expect(await counts('toMix')).toEqual([0, 0, 0, 0])
    await db().bakery.update({ where: moved, data: { dayTurnsAtH: 5 } })
    expect(await counts('toMix')).toEqual([1, 1, 1, 1])
    await db().bakery.update({ where: moved, data: { dayTurnsAtH: 0 } })
    const { revision } = await db().trial.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: proposed.trialId } },
    })
    valueOf(
      await stopTrial.call(bakery.head.caller, {
        trialId: proposed.trialId,
        seenRevision: revision,
        reason: 'No flour.',
      }),
    )
    expect(await counts('toMix')).toEqual([0, 0, 0, 0])
    // It was called off before anything was baked, so there is nothing to decide on.
    expect(await counts('toDecide')).toEqual([0, 0, null, null])
  })

  it('is a dough under way with what it misses, from its begin until it is measured', async () => {
    const trial = await makeApprovedTrial(bakery, { pieces: 2 })
    const [batch] = trial.batches
    const key = { batchId: batch!.batchId }
    expect(await counts('underWay')).toEqual([0, 0, 0, 0])
    valueOf(await beginBatch.call(bakery.early.caller, { ...key, seenRevision: 1, cleanDownDone: false }))
    expect(await counts('underWay')).toEqual([1, 1, 1, 1])
    const missing = (await waits(bakery.late)).underWay?.rows[0]?.missing ?? 0
    expect((await waits(bakery.late)).underWay?.rows).toMatchObject([
      { ...key, code: batch!.code, state: 'weighing', number: 1 },
    ])
    const log = (more: object) =>
      logReading.call(bakery.early.caller, {
        id: uuid(),
        ...key,
        measureId: trial.measures['dough-temp'],
        repeat: 1,
        value: '26',
        unit: '°C',
        takenAt: testNow.toISOString(),
        ...more,
      })
    valueOf(await log({}))
    expect((await waits(bakery.late)).underWay?.rows[0]?.missing).toBe(missing - 1)
    for (const [at, to] of [
      [2, 'in_work'],
      [3, 'baked'],
    ] as const)
      valueOf(await moveBatch.call(bakery.early.caller, { ...key, seenRevision: at, to }))
    expect(await counts('underWay')).toEqual([1, 1, 1, 1])
    valueOf(
      await moveBatch.call(bakery.early.caller, { ...key, seenRevision: 4, to: 'measured', why: 'the scale broke' }),
    )
    expect(await counts('underWay')).toEqual([0, 0, 0, 0])
  })

  it('is an entry that is kept aside, for whoever may settle it, until one of them does', async () => {
    const { trial, entry } = await putAside()
    expect(await counts('toSettle')).toEqual([1, 1, null, null])
    expect((await waits(bakery.head)).toSettle?.rows).toEqual([
      {
        ...entry,
        code: trial.batches[0]!.code,
        sentBy: 'Esi',
        number: 1,
        formula: expect.stringMatching(/^White tin/),
        since: testNow,
      },
    ])
    valueOf(
      await settleEntry.call(bakery.owner.caller, { ...entry, take: false, seenReadingId: null, reason: 'a slip' }),
    )
    expect(await counts('toSettle')).toEqual([0, 0, null, null])
  })

  it('is a trial of which every dough is measured or lost, then the decision on it, then nothing', async () => {
    const trial = await makeEndedTrial(bakery, { state: 'baking', unmeasured: 2 })
    expect(await counts('toClose')).toEqual([1, 1, null, null])
    expect(await counts('toDecide')).toEqual([0, 0, null, null])
    valueOf(
      await closeTrial.call(bakery.head.caller, {
        trialId: trial.trialId,
        seenRevision: trial.revision,
        early: false,
        reason: 'Nobody weighed the water.',
      }),
    )
    expect(await counts('toClose')).toEqual([0, 0, null, null])
    expect(await counts('toDecide')).toEqual([1, 1, null, null])
    valueOf(
      await keepFormula.call(bakery.head.caller, {
        trialId: trial.trialId,
        seenRevision: trial.revision + 1,
        reason: 'Not worth it.',
      }),
    )
    expect(await counts('toDecide')).toEqual([0, 0, null, null])
  })

  it('is no trial with a dough left to bake', async () => {
    const trial = await makeApprovedTrial(bakery)
    valueOf(
      await beginBatch.call(bakery.early.caller, {
        batchId: trial.batches[0]!.batchId,
        seenRevision: 1,
        cleanDownDone: false,
      }),
    )
    expect(await counts('toClose')).toEqual([0, 0, null, null])
  })

  it('is a draft for those whose signature it wants, and for the other one only when the first has signed', async () => {
    const trial = await makeEndedTrial(bakery)
    // Yoghurt brings milk, so the owner's and the head baker's are needed; the head baker drafted it.
    const { decisionId, formulaId, versionId } = valueOf(
      await draftChange.call(bakery.head.caller, {
        trialId: trial.trialId,
        seenRevision: trial.revision,
        reason: 'Softer.',
        armId: trial.armIds[2],
      }),
    )
    expect(await counts('toSign')).toEqual([1, 1, null, null])
    expect((await waits(bakery.owner)).toSign?.rows).toEqual([
      { versionId, formulaId, decisionId, formula: expect.any(String), number: 2, reason: 'Softer.', since: testNow },
    ])
    const sign = async (by: TestPerson) => {
      const { revision, contentHash } = valueOf(await getVersion.call(by.caller, { formulaId, versionId }))
      return signOffVersion.call(by.caller, {
        versionId,
        seenRevision: revision,
        seenHash: contentHash,
        effectiveAt: null,
      })
    }
    valueOf(await sign(bakery.head))
    expect(await counts('toSign')).toEqual([1, 0, null, null])
    valueOf(await sign(bakery.owner))
    expect(await counts('toSign')).toEqual([0, 0, null, null])
  })

  it('is a harmless draft for the second person, not for its writer, and none after what one signed has moved on', async () => {
    const { versionId: fromVersionId, ids } = await makeTrialStores(bakery)
    const draft = valueOf(await draftVersion.call(bakery.head.caller, { fromVersionId, reason: 'As before.' }))
    expect(await counts('toSign')).toEqual([1, 0, null, null])
    const { revision, contentHash } = valueOf(await getVersion.call(bakery.owner.caller, draft))
    // An allergen comes in by the stores: both signatures are needed, and the owner gives the first one.
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: ids.oil } },
      data: { allergens: ['sesame'] },
    })
    expect(
      refusalOf(
        await signOffVersion.call(bakery.owner.caller, {
          versionId: draft.versionId,
          seenRevision: revision,
          seenHash: contentHash,
          effectiveAt: null,
        }),
      ),
    ).toBe('content-moved-on')
    const again = valueOf(await getVersion.call(bakery.owner.caller, draft))
    valueOf(
      await signOffVersion.call(bakery.owner.caller, {
        versionId: draft.versionId,
        seenRevision: again.revision,
        seenHash: again.contentHash,
        effectiveAt: null,
      }),
    )
    expect(await counts('toSign')).toEqual([0, 1, null, null])
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: ids.oil } },
      data: { allergens: [] },
    })
    expect(await counts('toSign')).toEqual([0, 0, null, null])
  })

  it('stays to be seen where a draft is compared with a version that nobody can read', async () => {
    const stores = await makeTrialStores(bakery)
    await propose(bakery.early, trialContentOf(stores))
    valueOf(await draftVersion.call(bakery.head.caller, { fromVersionId: stores.versionId, reason: 'As before.' }))
    await connected(database.superUrl, async (client) => {
      await client.query('SET session_replication_role = replica')
      await client.query(`UPDATE formula_version SET content_text = '{"format":99}' WHERE bakery_id = $1 AND id = $2`, [
        bakery.bakeryId,
        stores.versionId,
      ])
    })
    expect(await counts('toSign')).toEqual([0, 0, null, null])
    expect(await counts('toApprove')).toEqual([1, 1, null, null])
  })

  it('is an amendment for those who may be its second person, until one of them said yes or no', async () => {
    const { trialId } = await makeEndedTrial(bakery)
    const { id: doughId, code } = await db().batch.findFirstOrThrow({ where: { trialId, kind: 'dough' } })
    valueOf(await proposeNotCounting.call(bakery.head.caller, { trialId, doughId, reason: 'No salt in it.' }))
    expect(await counts('toAmend')).toEqual([1, 0, 0, 0])
    expect((await waits(bakery.owner)).toAmend?.rows).toMatchObject([{ trialId, code, who: 'Henk' }])
    const { id: amendmentId, hash: seenHash } = await db().amendment.findFirstOrThrow({ where: { trialId } })
    valueOf(await decideAmendment.call(bakery.owner.caller, { amendmentId, seenHash, accept: true, note: '' }))
    expect(await counts('toAmend')).toEqual([0, 0, 0, 0])
  })

  it('is an amendment for any baker, where only who proposed it could decide', async () => {
    await db().person.updateMany({
      where: { bakeryId: bakery.bakeryId, role: 'head_baker' },
      data: { endedAt: testNow },
    })
    const { trialId } = await makeEndedTrial(bakery)
    const { id: doughId } = await db().batch.findFirstOrThrow({ where: { trialId, kind: 'dough' } })
    valueOf(await proposeNotCounting.call(bakery.owner.caller, { trialId, doughId, reason: 'No salt in it.' }))
    const waiting = await Promise.all([bakery.owner, bakery.early, bakery.late].map(waits))
    expect(waiting.map(({ toAmend }) => toAmend?.count)).toEqual([0, 1, 1])
  })

  it('is never another bakery’s', async () => {
    await propose(bakery.early, trialContentOf(await makeTrialStores(bakery)))
    const other = await makeBakery('Third')
    await makeEndedTrial(other, { state: 'baking' })
    valueOf(await makeStation.call(other.head.caller, { name: 'Bench' }))
    expect(await waits(other.owner)).toMatchObject({ stations: { count: 1, rows: [{ name: 'Bench', who: 'Henk' }] } })
    expect(await waits(neighbour.owner)).toEqual({
      brokenRecord: null,
      notAnchored: null,
      underWay: nothing,
      toMix: nothing,
      toSettle: nothing,
      toConfirm: nothing,
      sentBack: nothing,
      toApprove: nothing,
      toSign: nothing,
      toAmend: nothing,
      toClose: nothing,
      toDecide: nothing,
      stations: nothing,
    })
  })
})

describe('in a bakery where much waits', () => {
  it('takes as many statements for hundreds of trials as for four of each, counts them all, and shows the first few', async () => {
    const stores = await makeTrialStores(bakery)
    const content = trialContentOf(stores)
    await propose(bakery.early, content)
    const {
      trial: { trialId },
    } = await putAside()
    await db().mixingDay.updateMany({
      where: { bakeryId: bakery.bakeryId, trialId },
      data: { day: new Date('2026-03-01') },
    })
    await makeEndedTrial(bakery, { stores })
    await makeEndedTrial(bakery, { stores, state: 'baking' })
    valueOf(await draftVersion.call(bakery.head.caller, { fromVersionId: stores.versionId, reason: 'As before.' }))
    await double(0, 1)
    const few = await statementsOf(() => waits(bakery.owner))
    expect(few.answer).toMatchObject({
      underWay: { count: 4 },
      toMix: { count: 4 },
      toSettle: { count: 4 },
      toApprove: { count: 4 },
      toSign: { count: 4 },
      toClose: { count: 4 },
      toDecide: { count: 4 },
    })
    expect(few.statements).toBeGreaterThan(7)
    expect(few.statements).toBeLessThanOrEqual(25)

    await double(2, 3, 4, 5, 6, 7, 8)
    const many = await statementsOf(() => waits(bakery.owner))
    expect(many.answer).toMatchObject({
      underWay: { count: 512 },
      toMix: { count: 512 },
      toSettle: { count: 512 },
      toClose: { count: 512 },
      toDecide: { count: 512 },
      toApprove: { count: 200, isAtLeast: true },
      toSign: { isAtLeast: true },
    })
    expect(many.answer.toApprove?.rows).toHaveLength(3)
    expect(many.answer.underWay?.rows.map(({ batchId }) => batchId)).toHaveLength(3)
    expect(many.statements).toBe(few.statements)
  })
})

const again = (column: string) => `md5(old.${column}::text || $2)::uuid`
const copied = (table: string, changes: string, where = 'true') =>
  `INSERT INTO ${table} SELECT (jsonb_populate_record(old, jsonb_build_object(${changes}))).* FROM ${table} AS old WHERE old.bakery_id = $1 AND ${where}`
/** Every trial, mixing day, dough, entry kept aside and draft of a bakery once more, past the triggers and keys. */
const doubling = [
  copied('batch', `'id', ${again('id')}, 'trial_id', ${again('trial_id')}, 'mixing_day_id', ${again('mixing_day_id')}`),
  copied('entry_to_settle', `'entry_id', ${again('entry_id')}`),
  copied('mixing_day', `'id', ${again('id')}, 'trial_id', ${again('trial_id')}`),
  copied('trial', `'id', ${again('id')}, 'number', old.number + (SELECT max(number) FROM trial WHERE bakery_id = $1)`),
  copied(
    'formula_version',
    `'id', ${again('id')}, 'number', old.number + (SELECT max(number) FROM formula_version WHERE bakery_id = $1)`,
    'old.signed_at IS NULL',
  ),
]

const double = (...rounds: number[]) =>
  connected(database.superUrl, async (client) => {
    await client.query('SET session_replication_role = replica')
    for (const round of rounds)
      for (const statement of doubling) await client.query(statement, [bakery.bakeryId, String(round)])
  })
