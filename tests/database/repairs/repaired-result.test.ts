import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { canonicalText } from '@/lib/documents/canonical-text'
import { fileOfFormat1 } from '@/lib/documents/evidence-file/file-of-format-1'
import { checkFile } from '@/lib/kitchen/evidence/check-file'
import { isSound } from '@/lib/kitchen/evidence/finding'
import { getFile } from '@/lib/kitchen/evidence/get-file'
import { addDay } from '@/lib/kitchen/repairs/add-day'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial } from '../../support/ended-trial'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex')
const doughsOf = (trialId: string) =>
  db().batch.findMany({
    where: { bakeryId: bakery.bakeryId, trialId },
    include: { arm: true, mixingDay: true },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })

/** Measures a dough as another one was, loaf by loaf, but for so many grams. */
async function measureAs(id: string, otherId: string, heavierG: number): Promise<void> {
  const { bakeryId } = bakery
  const done = { state: 'measured', piecesMade: 4, piecesGood: 4, begunAt: testNow, doneAt: testNow } as const
  await db().batch.update({ where: { bakeryId_id: { bakeryId, id } }, data: done })
  const read = await db().reading.findMany({ where: { bakeryId, batchId: otherId, supersedesId: null } })
  await db().reading.createMany({
    data: read.map((reading) => ({
      ...reading,
      id: uuid(),
      batchId: id,
      value: reading.value + heavierG,
      contentHash: sha256(`${id} ${reading.id}`),
    })),
  })
}
const closed = async (trialId: string) => {
  const { revision } = await db().trial.findFirstOrThrow({ where: { id: trialId } })
  const input = { trialId, seenRevision: revision, early: false, reason: 'Closed in the test.' }
  valueOf(await closeTrial.call(bakery.head.caller, input))
}
const resultOf = async (trialId: string) => valueOf(await getResult.call(bakery.owner.caller, { trialId }))
const fileOf = async (trialId: string) => valueOf(await getFile.call(bakery.owner.caller, { trialId })).text
const wrong = (text: string) =>
  checkFile(text).flatMap((finding) => (isSound(finding) ? [] : [`${finding.what} ${finding.outcome}`]))

/** What was closed as somebody would forge it, with every hash that names it. */
function forged(
  text: string,
  change: (doughs: Record<string, unknown>[]) => unknown,
  repairs: (all: unknown[]) => unknown[] = (all) => all,
): string {
  const file = fileOfFormat1.parse(JSON.parse(text))
  const part = file.parts.find(({ kind }) => kind === 'closing')!
  const before = part.hash
  const closing = JSON.parse(part.text!) as { doughs: Record<string, unknown>[]; repairs: unknown[] }
  part.text = canonicalText({ ...closing, doughs: change(closing.doughs), repairs: repairs(closing.repairs) })
  part.hash = sha256(part.text)
  file.manifest.text = file.manifest.text.replace(before, part.hash)
  file.manifest.hash = sha256(file.manifest.text)
  return canonicalText(file)
}

describe('a trial of which a kind of dough was lost on every day', () => {
  it('is an indication for nothing, and a verdict once all are baked again, which the evidence bears out', async () => {
    const unrepaired = await makeEndedTrial(bakery, { state: 'baking', unmeasured: 0 })
    await closed(unrepaired.trialId)
    expect((await resultOf(unrepaired.trialId)).analysis.comparison?.isIndication).toBe(true)

    const { trialId } = await makeEndedTrial(bakery, { state: 'baking', unmeasured: 0, stores: unrepaired.stores })
    const doughs = await doughsOf(trialId)
    for (const { id, code, mixingDay } of doughs.filter(({ state }) => state === 'lost')) {
      const again = valueOf(await bakeAgain.call(bakery.early.caller, { batchId: id }))
      const like = doughs.find((dough) => dough.mixingDay.number === mixingDay.number && dough.arm.position === 2)!
      await measureAs(again.batchId, like.id, 0)
      expect((await resultOf(trialId)).conduct.repairs.at(-1)).toMatchObject({ code, otherCode: again.code })
    }
    await closed(trialId)
    const { analysis, conduct, sealed, batches } = await resultOf(trialId)
    expect(sealed.outcome).toBe('agrees')
    expect(analysis.comparison?.isIndication).toBe(false)
    expect(conduct.repairs.map(({ kind }) => kind)).toEqual(['bake_again', 'bake_again', 'bake_again'])
    for (const day of [1, 2, 3])
      expect(batches.filter((each) => each.day === day && each.arm === 0 && each.uncounted === null)).toHaveLength(1)
    const text = await fileOf(trialId)
    expect(wrong(text)).toEqual([])
    expect(checkFile(text)).toContainEqual({ what: 'doughs', outcome: 'agrees', facts: {} })
  })

  it('is a verdict too where a whole day was added for one, and nothing that was forged passes', async () => {
    const { trialId } = await makeEndedTrial(bakery, { state: 'baking', unmeasured: 0 })
    const planned = await doughsOf(trialId)
    for (const { id, mixingDay } of planned.filter(({ state }) => state === 'lost')) {
      if (mixingDay.number === 3) continue
      const again = valueOf(await bakeAgain.call(bakery.early.caller, { batchId: id }))
      await measureAs(again.batchId, planned.find(({ state }) => state === 'measured')!.id, mixingDay.number)
    }
    expect((await resultOf(trialId)).shortDays).toBe(1)
    const { number } = valueOf(await addDay.call(bakery.head.caller, { trialId, number: 3 }))
    for (const { id, arm } of (await doughsOf(trialId)).filter(({ mixingDay }) => mixingDay.number === number))
      await measureAs(id, planned.find(({ state }) => state === 'measured')!.id, 3 * arm.position)
    expect((await resultOf(trialId)).shortDays).toBe(0)
    await closed(trialId)
    const { analysis, conduct } = await resultOf(trialId)
    expect(analysis.comparison?.isIndication).toBe(false)
    expect(conduct.repairs.at(-1)).toMatchObject({ kind: 'add_day', day: 3, otherDay: 4, by: { name: 'Henk' } })
    const text = await fileOf(trialId)
    expect(wrong(text)).toEqual([])

    const last = (doughs: Record<string, unknown>[]) => doughs.at(-1)!
    const extra = forged(text, (doughs) => [
      ...doughs,
      { ...last(doughs), id: uuid(), code: '998', plannedOrder: Number(last(doughs).plannedOrder) + 1 },
    ])
    expect(wrong(extra)).toContain('doughs differs')
    const unlost = forged(text, (doughs) => doughs.map((dough) => ({ ...dough, state: 'measured', stateWhy: null })))
    expect(wrong(unlost)).toContain('doughs differs')
    const gone = forged(text, (doughs) => doughs.slice(0, -1))
    expect(wrong(gone)).toContain('doughs differs')
    // A dough that could have been made, but that nobody wrote down as made.
    const unwritten = (which: number) =>
      forged(
        text,
        (doughs) => doughs,
        (all) => all.filter((_, i) => i !== which),
      )
    expect(wrong(unwritten(0))).toContain('doughs differs')
    expect(wrong(unwritten(conduct.repairs.length - 1))).toContain('doughs differs')
  })
})
