import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { canonicalText } from '@/lib/documents/canonical-text'
import { fileOfFormat1 } from '@/lib/documents/evidence-file/file-of-format-1'
import {
  amendmentsOfFormat1,
  type AmendmentsOfFormat1,
} from '@/lib/documents/evidence-amendments/amendments-of-format-1'
import { decideAmendment } from '@/lib/kitchen/amendments/decide-amendment'
import { proposeNotCounting } from '@/lib/kitchen/amendments/propose-not-counting'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { checkFile } from '@/lib/kitchen/evidence/check-file'
import { checkTrial } from '@/lib/kitchen/evidence/check-trial'
import { isSound } from '@/lib/kitchen/evidence/finding'
import { getFile } from '@/lib/kitchen/evidence/get-file'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial } from '../../support/ended-trial'
import { forgedFile, sha256 } from '../../support/forged-file'
import { forLong } from '../../support/long'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())

type Trial = Awaited<ReturnType<typeof makeEndedTrial>>
/** Closed by the command, as people close it, so that the record notes it. */
async function closedTrial(): Promise<Trial> {
  const trial = await makeEndedTrial(bakery, { state: 'baking' })
  await close(trial)
  const { revision } = await db().trial.findFirstOrThrow({ where: { id: trial.trialId } })
  return { ...trial, revision }
}
const close = async (trial: Trial) =>
  valueOf(
    await closeTrial.call(bakery.head.caller, {
      trialId: trial.trialId,
      seenRevision: trial.revision,
      early: false,
      reason: 'Closed in the test.',
    }),
  )
/** Readings of such a trial came in at the tests' own time. */
const beforeRead = new Date(testNow.getTime() - 60_000)
const decided = async (trial: Trial) =>
  valueOf(
    await draftChange.call(bakery.head.caller, {
      trialId: trial.trialId,
      armId: trial.armIds[1],
      seenRevision: trial.revision,
      reason: 'It gives more.',
    }),
  )
const fileOf = async (trialId: string, who = bakery.owner) => valueOf(await getFile.call(who.caller, { trialId })).text
const wrong = (text: string) =>
  checkFile(text).flatMap((finding) => (isSound(finding) ? [] : [`${finding.what} ${finding.outcome}`]))
const outcomes = (text: string) => Object.fromEntries(checkFile(text).map(({ what, outcome }) => [what, outcome]))

describe('the evidence of a trial, as a file', () => {
  it('is worked out again from the file alone, before anybody decides and after', async () => {
    const trial = await closedTrial()
    const before = await fileOf(trial.trialId)
    expect(wrong(before)).toEqual([])
    expect(outcomes(before)).toMatchObject({ figures: 'agrees', costs: 'agrees', record: 'agrees', closing: 'agrees' })
    await decided(trial)
    const after = await fileOf(trial.trialId)
    expect(outcomes(after)).toMatchObject({
      figures: 'agrees',
      costs: 'agrees',
      evidence: 'agrees',
      declared: 'agrees',
    })
    expect(wrong(after)).toEqual([])
    const { findings } = valueOf(await checkTrial.call(bakery.owner.caller, { trialId: trial.trialId }))
    expect(findings.every((finding) => finding.isSound)).toBe(true)
    expect(findings[0]).toMatchObject({ what: 'book', outcome: 'agrees' })
  })

  it('holds what was signed on it, and names another content in its place', async () => {
    const trial = await closedTrial()
    const { formulaId, versionId } = await decided(trial)
    expect(outcomes(await fileOf(trial.trialId)).signed).toBe('not-there')
    for (const { caller } of [bakery.head, bakery.owner]) {
      const seen = valueOf(await getVersion.call(caller, { formulaId, versionId }))
      valueOf(
        await signOffVersion.call(caller, {
          versionId,
          seenRevision: seen.revision,
          seenHash: seen.contentHash,
          effectiveAt: null,
        }),
      )
    }
    const text = await fileOf(trial.trialId)
    expect(outcomes(text).signed).toBe('agrees')
    expect(wrong(text)).toEqual([])
    const file = fileOfFormat1.parse(JSON.parse(text))
    const other = file.signed!.text.replace(file.manifest.hash, 'a'.repeat(64))
    const swapped = canonicalText({ ...file, signed: { text: other, hash: sha256(other) } })
    expect(wrong(swapped)).toEqual(['signed differs'])
  })

  it('leaves out costs and the record for whoever may not see them, says so, and agrees all the same', async () => {
    const trial = await makeEndedTrial(bakery)
    await decided(trial)
    const [owner, baker] = [await fileOf(trial.trialId), await fileOf(trial.trialId, bakery.early)]
    expect(outcomes(baker)).toMatchObject({ figures: 'agrees', costs: 'left-out', record: 'left-out' })
    expect(wrong(baker)).toEqual([])
    expect(owner).toContain('perKgMinor')
    expect(baker).not.toMatch(/perKgMinor|perLoaf|perBatch/)
  })

  it('takes a line from paper', async () => {
    const trial = await makeEndedTrial(bakery)
    const paper = valueOf(await getDesk.call(bakery.owner.caller, {})).record
    await decided(trial)
    const text = await fileOf(trial.trialId)
    const said = (anchor: { number: number; hash: string }) =>
      checkFile(text, anchor).find(({ what }) => what === 'paper')!.outcome
    expect(said({ ...paper, hash: paper.hash.slice(0, 12).toUpperCase() })).toBe('agrees')
    expect(said({ ...paper, hash: '0'.repeat(12) })).toBe('differs')
    expect(said({ number: 1_000_000, hash: paper.hash })).toBe('not-there')
  })

  it('names a forgery at the thing itself, whoever made all hashes fit', async () => {
    const trial = await closedTrial()
    await decided(trial)
    const text = await fileOf(trial.trialId)
    const reading = /"value":(\d+)(?=,"valueEntered":"\d+")/
    expect(wrong(forgedFile(text, 'closing', (part) => part.replace(reading, '"value":9$1')))).toEqual([
      'figures differs',
      'closing differs',
      'evidence differs',
    ])
    expect(wrong(forgedFile(text, 'shown', (part) => part.replace('"verdict":"better"', '"verdict":"worse"')))).toEqual(
      ['figures differs', 'evidence differs'],
    )
    expect(wrong(forgedFile(text, 'shown', (part) => part.replace('"margin":5', '"margin":1')))).toEqual([
      'declared differs',
      'evidence differs',
    ])
    expect(wrong(forgedFile(text, 'costs', (part) => part.replace(/"perKgMinor":"\d/, '"perKgMinor":"9')))).toContain(
      'costs differs',
    )
    expect(wrong(forgedFile(text, 'plan', (part) => part.replace('"doughTempC":2', '"doughTempC":3')))).toContain(
      'belongs differs',
    )
    const swapped = forgedFile(text, 'closing', (part) => {
      const closing = JSON.parse(part) as { doughs: { arm: number }[] }
      const [first, second] = [
        closing.doughs.find(({ arm }) => arm === 0)!,
        closing.doughs.find(({ arm }) => arm === 1)!,
      ]
      ;[first.arm, second.arm] = [second.arm, first.arm]
      return canonicalText(closing)
    })
    expect(wrong(swapped)).toContain('figures differs')
  })

  it('works out from the file which dough is not of its arm, and names a weighing or a target that was changed', async () => {
    const trial = await makeEndedTrial(bakery, { state: 'baking' })
    const [stageId, ingredientId] = [trial.plannedG[1]!.at(-1)!.stageId, trial.stores.ids.malt]
    const dough = await db().batch.findFirstOrThrow({ where: { trialId: trial.trialId, arm: { position: 1 } } })
    const weighing = {
      bakeryId: bakery.bakeryId,
      trialId: trial.trialId,
      batchId: dough.id,
      stageId,
      ingredientId,
      part: 'premix',
      how: 'weighed',
      massG: 7777,
      massEntered: '7777',
      unitEntered: 'g',
      personId: bakery.early.personId,
      takenAt: beforeRead,
      receivedAt: beforeRead,
      contentHash: 'a'.repeat(64),
    } as const
    await db().weighing.create({ data: { ...weighing, id: uuid() } })
    await close(trial)
    const text = await fileOf(trial.trialId)
    expect(text).toContain('out-of-its-arm')
    expect(outcomes(text)).toMatchObject({ figures: 'agrees', weighings: 'agrees' })
    expect(wrong(text)).toEqual([])

    const targetG = /"massG":([\d.]+),"stepG":[\d.]+,"toleranceG"/
    const left = forgedFile(text, 'closing', (part) => part.replace('"how":"weighed","id"', '"how":"ticked","id"'))
    expect(wrong(left)).toEqual(['figures differs', 'costs differs', 'closing differs'])
    const other = forgedFile(text, 'closing', (part) => part.replace('"massG":7777', '"massG":8888'))
    expect(wrong(other)).toEqual(['closing differs'])
    const moved = forgedFile(text, 'closing', (part) =>
      part.replace(targetG, (said) => said.replace('"massG":', '"massG":9')),
    )
    expect(wrong(moved)).toEqual(['weighings differs', 'closing differs'])
    const wide = forgedFile(text, 'closing', (part) => part.replace(/"toleranceG":[\d.]+/g, '"toleranceG":99999'))
    expect(wrong(wide)).toEqual(['figures differs', 'weighings differs', 'costs differs', 'closing differs'])
  })

  it('holds what came after the closing, works the second result out again, and names what was changed of it', async () => {
    const trial = await closedTrial()
    expect(outcomes(await fileOf(trial.trialId)).amendments).toBe('not-there')
    const dough = await db().batch.findFirstOrThrow({
      where: { trialId: trial.trialId, arm: { position: 1 } },
      orderBy: { plannedOrder: 'asc' },
    })
    const { amendmentId } = valueOf(
      await proposeNotCounting.call(bakery.early.caller, {
        trialId: trial.trialId,
        doughId: dough.id,
        reason: 'No salt: the tub was full.',
      }),
    )
    const waiting = await fileOf(trial.trialId)
    expect(outcomes(waiting).amendments).toBe('agrees')
    expect(wrong(waiting)).toEqual([])
    const { hash } = await db().amendment.findFirstOrThrow({ where: { id: amendmentId } })
    valueOf(
      await decideAmendment.call(bakery.head.caller, { amendmentId, seenHash: hash, accept: true, note: 'Seen.' }),
    )
    await decided(trial)
    const text = await fileOf(trial.trialId)
    expect(wrong(text)).toEqual([])
    expect(outcomes(text).amendments).toBe('agrees')
    const part = fileOfFormat1.parse(JSON.parse(text)).parts.find(({ kind }) => kind === 'amendments')!
    const kept = amendmentsOfFormat1.parse(JSON.parse(part.text!))
    expect(kept.second!.uncounted.map(({ code }) => code)).toContain(dough.code)
    const changed = (change: (kept: AmendmentsOfFormat1) => void) =>
      wrong(
        forgedFile(text, 'amendments', (own) => {
          const value = amendmentsOfFormat1.parse(JSON.parse(own))
          change(value)
          return canonicalText(value)
        }),
      )
    const found = ['amendments differs', 'evidence differs']
    const foundByRecord = ['amendments differs', 'amendments-noted differs', 'evidence differs']
    expect(changed((value) => (value.second!.controlMean! += 0.01))).toEqual(found)
    expect(changed((value) => (value.amendments[0]!.verdict!.isAccepted = false))).toEqual(foundByRecord)
    expect(changed((value) => (value.second = null))).toEqual(found)
    expect(
      changed((value) => {
        const [one] = value.amendments
        one!.text = one!.text.replace(dough.code, '999')
        one!.hash = sha256(one!.text)
      }),
    ).toEqual(foundByRecord)
  })

  it('says that other rules came to other figures, and shows both', async () => {
    const trial = await makeEndedTrial(bakery)
    const text = forgedFile(await fileOf(trial.trialId), 'shown', (part) =>
      part.replace('"calculations":2', '"calculations":1').replace('"verdict":"better"', '"verdict":"worse"'),
    )
    const found = checkFile(text).find(({ what }) => what === 'figures')!
    expect(found.outcome).toBe('other-calculations')
    expect(found.facts).toMatchObject({ was: '"worse"', is: '"better"', by: 1, now: 2 })
  })

  it('has no digit that can be changed without being found', async () => {
    const trial = await makeEndedTrial(bakery)
    await decided(trial)
    const text = await fileOf(trial.trialId)
    const digits = [...text.matchAll(/\d/g)].map(({ index }) => index)
    fc.assert(
      fc.property(fc.constantFrom(...digits), fc.integer({ min: 1, max: 9 }), (at, by) => {
        const other = (Number(text[at]) + by) % 10
        const spoilt = `${text.slice(0, at)}${other}${text.slice(at + 1)}`
        expect(wrong(spoilt)).not.toEqual([])
      }),
      { seed: 41, numRuns: forLong(60, 3000) },
    )
  })
})

describe('what is not to be had', () => {
  it('a file of a trial that goes on, of another bakery’s, or for somebody who is not signed in', async () => {
    const trial = await makeEndedTrial(bakery, { state: 'baking' })
    expect(refusalOf(await getFile.call(bakery.owner.caller, { trialId: trial.trialId }))).toBe('trial-not-ended')
    expect(refusalOf(await checkTrial.call(bakery.owner.caller, { trialId: trial.trialId }))).toBe('trial-not-ended')
    const ended = await makeEndedTrial(bakery, { stores: trial.stores })
    expect(refusalOf(await getFile.call(neighbour.owner.caller, { trialId: ended.trialId }))).toBe('not-found')
  })

  it('a file of what nobody kept where the book is not what was closed: the check names the book', async () => {
    const trial = await makeEndedTrial(bakery)
    await connected(database.ownerUrl, (owner) =>
      owner.query(
        `ALTER TABLE reading DISABLE TRIGGER USER;
         UPDATE reading SET value = value * 1.2 WHERE trial_id = '${trial.trialId}';
         ALTER TABLE reading ENABLE TRIGGER USER`,
      ),
    )
    expect(refusalOf(await getFile.call(bakery.owner.caller, { trialId: trial.trialId }))).toBe('seal-broken')
    expect(valueOf(await checkTrial.call(bakery.owner.caller, { trialId: trial.trialId }))).toMatchObject({
      hasFile: false,
      findings: [{ what: 'book', outcome: 'differs', isSound: false }],
    })
  })

  it('no entry of the record of another bakery is in a file', async () => {
    const trial = await makeEndedTrial(bakery)
    const file = fileOfFormat1.parse(JSON.parse(await fileOf(trial.trialId)))
    const rows = await db().auditEntry.findMany({ where: { bakeryId: bakery.bakeryId }, select: { hash: true } })
    const own = new Set(rows.map(({ hash }) => hash))
    expect(file.record.length).toBeGreaterThan(0)
    expect(file.record.every(({ hash }) => own.has(hash))).toBe(true)
  })
})
