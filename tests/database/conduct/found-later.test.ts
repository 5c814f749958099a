import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import { headlineOf } from '@/app/(desk)/trials/[trialId]/result/say-result'
import type { ShownBakery } from '@/app/(desk)/trials/[trialId]/result/shown-result'
import { db } from '@/lib/db/client'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { noteFoundCause } from '@/lib/kitchen/shifts/note-found-cause'
import { signFoundCause } from '@/lib/kitchen/shifts/sign-found-cause'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import {
  callerOf,
  makeBakery,
  refusalOf,
  testNow,
  valueOf,
  type TestBakery,
  type TestPerson,
} from '../../support/bakery'
import { closeAsItIs } from '../../support/close-as-it-is'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery, { days: 3, pieces: 1 })
  batchId = trial.batches[0]!.batchId
})

const at = (minute: number, who: TestPerson) =>
  callerOf(who.sessionSecret, new Date(testNow.getTime() + minute * 60_000))
const rowOf = (id: string) =>
  db().batch.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id } } })
const read = async (minute: number, id: string, code: string, value: number, unit: string) =>
  valueOf(
    await logReading.call(at(minute, bakery.early), {
      id: uuid(),
      batchId: id,
      measureId: trial.measures[code],
      piece: 1,
      repeat: 1,
      value: String(value),
      unit,
      takenAt: testNow.toISOString(),
    }),
  )
const begin = async (id: string) =>
  valueOf(await beginBatch.call(at(0, bakery.early), { batchId: id, seenRevision: 1, cleanDownDone: true }))
const move = async (minute: number, id: string, to: string, why?: string) =>
  moveBatch.call(at(minute, bakery.early), {
    batchId: id,
    seenRevision: (await rowOf(id)).revision,
    to,
    ...(why ? { why } : {}),
  })
async function bake(id: string, volume: number) {
  await begin(id)
  for (const to of ['in_work', 'baked']) valueOf(await move(1, id, to))
  await read(2, id, 'loaf-mass', 400, 'g')
  await read(3, id, 'loaf-volume', volume, 'mL')
  valueOf(await move(4, id, 'measured', 'one reading each'))
}
const find = (minute: number, who = bakery.early, id = batchId) =>
  noteFoundCause.call(at(minute, who), { batchId: id, object: 'ingredient_left', what: 'the salt is in its tub' })
const sign = async (foundCauseId: string, who = bakery.late, id = batchId) =>
  signFoundCause.call(at(20, who), { foundCauseId, seenRevision: (await rowOf(id)).revision })

describe('what is found later', () => {
  it('takes nothing out before a second person signs it, and then sets a measured batch aside for good', async () => {
    await bake(batchId, 1900)
    const { foundCauseId } = valueOf(await find(10))
    expect((await rowOf(batchId)).state).toBe('measured')
    expect(refusalOf(await move(11, batchId, 'set_aside', 'x'))).toBe('not-the-next-step')
    expect(refusalOf(await sign(foundCauseId, bakery.early))).toBe('own-found-cause')
    const shown = async (who: TestPerson) => valueOf(await getBatch.call(at(12, who), { batchId })).found
    expect(await shown(bakery.early)).toMatchObject([
      { object: 'ingredient_left', who: 'Esi', signed: null, maySignAs: null },
    ])
    expect(await shown(bakery.late)).toMatchObject([{ maySignAs: 'second_person' }])
    valueOf(await sign(foundCauseId))
    expect(await rowOf(batchId)).toMatchObject({ state: 'set_aside', stateWhy: 'the salt is in its tub' })
    expect(await shown(bakery.late)).toMatchObject([{ signed: { who: 'Lars', isAlone: false }, maySignAs: null }])
    const { revision: seenRevision } = await rowOf(batchId)
    expect(refusalOf(await undoMove.call(at(20, bakery.late), { batchId, seenRevision }))).toBe('nothing-to-undo')
    expect(refusalOf(await sign(foundCauseId, bakery.head))).toBe('not-the-next-step')
    expect(await db().reading.count({ where: { bakeryId: bakery.bakeryId, batchId } })).toBe(2)
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      orderBy: { number: 'desc' },
    })
    expect(JSON.parse(entry.entryText)).toMatchObject({
      action: 'shifts.sign-found-cause',
      target: batchId,
      before: 'measured',
      after: { state: 'set_aside', foundCause: foundCauseId, as: 'second_person' },
    })
  })

  it('sets a batch aside that was read and is not measured yet, which nothing noted then can', async () => {
    await begin(batchId)
    await read(1, batchId, 'loaf-volume', 1900, 'mL')
    expect(refusalOf(await move(2, batchId, 'set_aside', 'x'))).toBe('read-before-any-cause')
    valueOf(await sign(valueOf(await find(3)).foundCauseId))
    expect((await rowOf(batchId)).state).toBe('set_aside')
  })

  it('who is alone in the bakery signs alone', async () => {
    await begin(batchId)
    const { foundCauseId } = valueOf(await find(1, bakery.owner))
    expect(refusalOf(await sign(foundCauseId, bakery.owner))).toBe('own-found-cause')
    await db().person.updateMany({
      where: { bakeryId: bakery.bakeryId, id: { not: bakery.owner.personId } },
      data: { endedAt: testNow },
    })
    valueOf(await sign(foundCauseId, bakery.owner))
    expect(await db().foundCauseSignature.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId } })).toMatchObject({
      signsAs: 'alone',
      signedById: bakery.owner.personId,
    })
  })

  it('is of a batch of one’s own that was begun, is in, and whose trial is open', async () => {
    expect(refusalOf(await find(0))).toBe('batch-not-begun')
    await begin(batchId)
    expect(refusalOf(await find(1, neighbour.owner))).toBe('not-found')
    const { foundCauseId } = valueOf(await find(1))
    expect(refusalOf(await sign(foundCauseId, neighbour.owner))).toBe('not-found')
    const stale = await signFoundCause.call(at(2, bakery.late), { foundCauseId, seenRevision: 1 })
    expect(refusalOf(stale)).toBe('stale')
    expect(
      refusalOf(await noteFoundCause.call(at(2, bakery.early), { batchId, object: 'hearsay', what: 'x' })),
    ).toMatch(/^invalid object/)
    expect(refusalOf(await noteFoundCause.call(at(2, bakery.early), { batchId, object: 'tasted', what: ' ' }))).toMatch(
      /^invalid what/,
    )
    await closeAsItIs(bakery, trial.trialId, testNow, 'stopped', 'enough')
    expect(refusalOf(await sign(foundCauseId))).toBe('trial-stopped')
    expect(refusalOf(await find(3))).toBe('trial-stopped')
  })

  it('is signed once, also by two at the same time', async () => {
    await begin(batchId)
    const { foundCauseId } = valueOf(await find(1))
    const { revision: seenRevision } = await rowOf(batchId)
    const both = await Promise.all(
      [bakery.late, bakery.head].map((who) => signFoundCause.call(at(2, who), { foundCauseId, seenRevision })),
    )
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await db().foundCauseSignature.count({ where: { bakeryId: bakery.bakeryId } })).toBe(1)
  })

  it('is so to the database as well: nothing is changed, nobody signs twice, and unsigned nothing is set aside', async () => {
    await bake(batchId, 1900)
    const { foundCauseId } = valueOf(await find(10))
    for (const url of [database.ownerUrl, database.superUrl])
      await connected(url, async (client) => {
        await expect(client.query(`UPDATE found_cause SET what = 'y'`)).rejects.toMatchObject({ code: 'EV001' })
        await expect(
          client.query(`UPDATE batch SET state = 'set_aside', state_why = 'x' WHERE id = '${batchId}'`),
        ).rejects.toMatchObject({ code: 'EV005' })
        await expect(
          client.query(
            `INSERT INTO found_cause_signature SELECT bakery_id, id, found_by_id, 'second_person', found_by_id, now() FROM found_cause WHERE id = '${foundCauseId}'`,
          ),
        ).rejects.toThrow(/found_cause_signature_by_a_second/)
      })
  })
})

describe('the result', () => {
  /** Two doughs of each on three days, the control before milk, which adds a third; one control of the second day is huge. */
  const volumes = [
    [1600, 1620, 2100, 2120],
    [1610, 2400, 2130, 2110],
    [1590, 1600, 2080, 2110],
  ].flat()

  it('has the less favourable of without and with the dough in its headline, lists it, and shows both', async () => {
    trial = await makeApprovedTrial(bakery, { days: 3, batchesPerArm: 2, pieces: 1 })
    for (const [i, each] of trial.batches.entries()) await bake(each.batchId, volumes[i]!)
    const [huge, other] = [trial.batches[5]!, trial.batches[0]!]
    valueOf(await sign(valueOf(await find(10, bakery.early, huge.batchId)).foundCauseId, bakery.late, huge.batchId))
    valueOf(await find(11, bakery.early, other.batchId))
    await closeAsItIs(bakery, trial.trialId, new Date(testNow.getTime() + 24 * 60_000))
    const result = valueOf(await getResult.call(at(25, bakery.head), { trialId: trial.trialId }))
    expect(result.sealed.outcome).toBe('agrees')
    expect(result.conduct.foundCauses).toMatchObject([
      { code: huge.code, signed: { who: 'Lars', isAlone: false } },
      { code: other.code, signed: null },
    ])
    const verdictIn = (comparison: { arms: readonly { verdict: { verdict: string } | null }[] } | null) =>
      comparison?.arms[1]?.verdict?.verdict
    expect(verdictIn(result.analysis.comparison)).toBe('better')
    expect(result.withTakenOut?.codes).toEqual([huge.code])
    expect(verdictIn(result.withTakenOut!.comparison)).toBe('undecided')
    expect(verdictIn(result.headline.comparison)).toBe('undecided')
    const bakeryShown = { locale: 'en-GB' } as unknown as ShownBakery
    const forms = resultForms({ result, measureCode: 'specific-volume', bakery: bakeryShown, language: 'en' })
    const { headline, lead } = headlineOf(result, null, forms)
    expect(headline).toMatch(/can.?not be said|undecided|not tell|not enough/i)
    expect(lead).toContain(
      `Dough ${huge.code} was set aside for what was found after it was read. This is the less favourable of the comparison without it and with it.`,
    )
  })
})
