import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { readAmendment } from '@/lib/documents/amendment/read-amendment'
import { textOfAmendment } from '@/lib/documents/amendment/text-of-amendment'
import { canonicalText } from '@/lib/documents/canonical-text'
import {
  amendmentsOfFormat1,
  type AmendmentsOfFormat1,
} from '@/lib/documents/evidence-amendments/amendments-of-format-1'
import { fileOfFormat1 } from '@/lib/documents/evidence-file/file-of-format-1'
import { decideAmendment } from '@/lib/kitchen/amendments/decide-amendment'
import { proposeNotCounting } from '@/lib/kitchen/amendments/propose-not-counting'
import { signSlip } from '@/lib/kitchen/amendments/sign-slip'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { checkFile } from '@/lib/kitchen/evidence/check-file'
import { isSound } from '@/lib/kitchen/evidence/finding'
import { getFile } from '@/lib/kitchen/evidence/get-file'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { makeBakery, testNow, valueOf, type TestBakery, type TestPerson } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'
import { forgedFile, withoutPart } from '../../support/forged-file'

let database: FreshDatabase
let bakery: TestBakery
let trial: EndedTrial
let doughs: { id: string; code: string }[]

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeEndedTrial(bakery)
  doughs = await db().batch.findMany({
    where: { trialId: trial.trialId, kind: 'dough', arm: { position: 1 } },
    orderBy: { plannedOrder: 'asc' },
  })
})
afterAll(() => database.drop())

const fileOf = async (who: TestPerson = bakery.owner) =>
  valueOf(await getFile.call(who.caller, { trialId: trial.trialId })).text
const propose = async (at: number) =>
  valueOf(
    await proposeNotCounting.call(bakery.early.caller, {
      trialId: trial.trialId,
      doughId: doughs[at]!.id,
      reason: 'No salt: the tub was full.',
    }),
  ).amendmentId
async function decide(amendmentId: string, accept: boolean) {
  const { hash: seenHash } = await db().amendment.findFirstOrThrow({ where: { id: amendmentId } })
  valueOf(await decideAmendment.call(bakery.head.caller, { amendmentId, seenHash, accept, note: 'Seen.' }))
}
const wrong = (text: string) =>
  checkFile(text).flatMap((finding) => (isSound(finding) ? [] : [`${finding.what} ${finding.outcome}`]))
const noted = (text: string) => checkFile(text).find(({ what }) => what === 'amendments-noted')!
const changed = (text: string, change: (kept: AmendmentsOfFormat1) => void) =>
  forgedFile(text, 'amendments', (part) => {
    const value = amendmentsOfFormat1.parse(JSON.parse(part))
    change(value)
    return canonicalText(value)
  })
/** Another amendment out of one that is there, with its own hash. */
function another({ text, hash }: { text: string; hash: string }, change: { id?: string; reason: string }) {
  const read = readAmendment(text, hash)
  if (read.outcome !== 'read') throw new Error(read.outcome)
  return textOfAmendment({ ...read.amendment, ...change })
}
const found = ['amendments-noted differs']

describe('in the file of a trial that nobody has decided on', () => {
  it('amendments and what was said of them are as the record notes them', async () => {
    expect(noted(await fileOf()).outcome).toBe('not-there')
    await propose(0)
    await decide(await propose(1), false)
    const text = await fileOf()
    expect(noted(text).outcome).toBe('agrees')
    expect(wrong(text)).toEqual([])
    expect(noted(await fileOf(bakery.early)).outcome).toBe('left-out')
    expect(wrong(await fileOf(bakery.early))).toEqual([])
  })

  it('one that was put in is named', async () => {
    await propose(0)
    const text = changed(await fileOf(), ({ amendments }) => {
      amendments.push({
        ...another(amendments[0]!, { id: uuid(), reason: 'The scale was off as well.' }),
        verdict: null,
      })
    })
    expect(wrong(text)).toEqual(found)
    expect(noted(text).facts).toEqual({ code: doughs[0]!.code })
  })

  it('one that was taken away is named, also with the whole part', async () => {
    await propose(0)
    await propose(1)
    const text = await fileOf()
    const without = changed(text, ({ amendments }) => void amendments.pop())
    expect(wrong(without)).toEqual(found)
    expect(noted(without).facts).toEqual({ code: doughs[1]!.code })
    expect(wrong(withoutPart(text, 'amendments'))).toEqual(found)
  })

  it('one that was changed is named, and so is what was said of it', async () => {
    await decide(await propose(0), false)
    const text = await fileOf()
    const other = changed(text, ({ amendments: [one] }) => {
      Object.assign(one!, another(one!, { reason: 'Nobody liked it.' }))
    })
    expect(wrong(other)).toEqual(found)
    const verdict = (change: (verdict: NonNullable<AmendmentsOfFormat1['amendments'][number]['verdict']>) => void) =>
      wrong(changed(text, ({ amendments: [one] }) => change(one!.verdict!)))
    expect(wrong(changed(text, ({ amendments: [one] }) => void (one!.verdict = null)))).toEqual(found)
    expect(verdict((said) => (said.note = 'Not seen.'))).toEqual(found)
    expect(verdict((said) => (said.by.id = bakery.owner.personId))).toEqual(found)
    expect(verdict((said) => (said.as = 'alone'))).toEqual(found)
    expect(verdict((said) => (said.at = new Date(0).toISOString()))).toEqual(found)
    expect(verdict((said) => (said.isAccepted = true))).toContain(found[0])
  })

  it('who signed that the first result rested on a slip is as the record notes it', async () => {
    await decide(await propose(0), true)
    const { trialId } = trial
    const { after } = valueOf(await getResult.call(bakery.owner.caller, { trialId }))
    const { amendedHash } = after!.slip!
    for (const { caller } of [bakery.owner, bakery.head])
      valueOf(await signSlip.call(caller, { trialId, amendedHash, reason: 'The tub was full.' }))
    const text = await fileOf()
    expect(wrong(text)).toEqual([])
    expect(wrong(changed(text, ({ slip }) => void slip.pop()))).toEqual(found)
    expect(wrong(changed(text, ({ slip: [one] }) => (one!.reason = 'For fun.')))).toEqual(found)
  })

  it('those that devices sent are in the record of the file, and one that was not sent is named', async () => {
    const sent = (piece: number) => ({
      kind: 'reading',
      id: uuid(),
      batchId: doughs[0]!.id,
      measureId: trial.stores.measureIds['loaf-mass'],
      piece,
      repeat: 1,
      value: '432',
      unit: 'g',
      takenAt: testNow.toISOString(),
    })
    valueOf(await takeEntries.call(bakery.early.caller, { entries: [sent(1), sent(2)] }))
    const text = await fileOf()
    expect(text.includes('intake.take-entries')).toBe(true)
    expect(noted(text).outcome).toBe('agrees')
    expect(wrong(text)).toEqual([])
    expect(wrong(changed(text, ({ amendments }) => void amendments.pop()))).toEqual(found)
    const put = changed(text, ({ amendments }) => {
      amendments.push({ ...another(amendments[0]!, { id: uuid(), reason: 'late' }), verdict: null })
    })
    expect(wrong(put)).toEqual(found)
  })

  it('a text of the record that was taken out alone is named', async () => {
    await propose(0)
    const file = fileOfFormat1.parse(JSON.parse(await fileOf()))
    const entry = file.record.find(({ text }) => text?.includes('propose-not-counting'))!
    entry.text = null
    expect(wrong(canonicalText(file))).toEqual(['amendments-noted differs', 'record differs'])
  })
})

it('evidence that was kept with a decision has the amendments from before it', async () => {
  await propose(0)
  const { trialId, armIds, revision } = trial
  const asked = { trialId, armId: armIds[1], seenRevision: revision, reason: 'It gives more.' }
  valueOf(await draftChange.call(bakery.head.caller, asked))
  await propose(1)
  const text = await fileOf()
  expect(text).toContain(doughs[1]!.id)
  expect(noted(text).outcome).toBe('agrees')
  expect(wrong(text)).toEqual([])
})
