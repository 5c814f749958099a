import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { listRecord } from '@/lib/kitchen/audit/list-record'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { getDecision } from '@/lib/kitchen/decisions/get-decision'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import { compareVersions } from '@/lib/kitchen/formulas/compare-versions'
import { contentAsItIsNow } from '@/lib/kitchen/formulas/content-as-shown'
import { draftVersion } from '@/lib/kitchen/formulas/draft-version'
import { getFormula } from '@/lib/kitchen/formulas/get-formula'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { readVersion } from '@/lib/kitchen/formulas/read-version'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { getSettings } from '@/lib/kitchen/people/get-settings'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { getWeighOut } from '@/lib/kitchen/trials/get-weigh-out'
import { makeApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial } from '../../support/ended-trial'
import { makeTrialStores } from '../../support/trials'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
})
beforeEach(async () => {
  bakery = await makeBakery()
})
afterAll(() => database.drop())

/** The same text as a later Evendough would have written it, with its own hash. */
const later = (text: string, format = 1000) => {
  const other = text.replace(/"format":\d+/, `"format":${format}`)
  return { text: other, hash: hashOfText(other) }
}
const unknown = { ok: false, refusal: { code: 'unknown-format', facts: { format: 1000 } } }
const damaged = { ok: false, refusal: { code: 'damaged-text' } }

describe('a plan that cannot be read', () => {
  /** An approved trial of which the plan became something else before it was approved. */
  const trialWith = async (change: (text: string) => { text: string; hash: string }) => {
    const trial = await makeApprovedTrial(bakery, { isUndecided: true })
    const key = { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } }
    const { planText } = await db().trial.findUniqueOrThrow({ where: key, select: { planText: true } })
    const { text, hash } = change(planText!)
    await db().trial.update({ where: key, data: { planText: text, planHash: hash } })
    await db().trial.update({ where: key, data: { state: 'approved' } })
    return trial
  }

  it('is said to be in a format that is not known, on the plan and on the sheets', async () => {
    const { trialId } = await trialWith((text) => later(text))
    expect(await getPlan.call(bakery.owner.caller, { trialId })).toMatchObject(unknown)
    expect(await getWeighOut.call(bakery.early.caller, { trialId })).toMatchObject(unknown)
  })

  it('is said to be damaged when it does not fit its hash, or not its format', async () => {
    for (const change of [
      (text: string) => ({ text, hash: 'b'.repeat(64) }),
      (text: string) => later(text.replace('"onTop"', '"atop"'), 3),
      () => ({ text: 'eaten', hash: hashOfText('eaten') }),
    ]) {
      const { trialId, batches } = await trialWith(change)
      expect(await getPlan.call(bakery.owner.caller, { trialId })).toMatchObject(damaged)
      expect(await getWeighOut.call(bakery.early.caller, { trialId })).toMatchObject(damaged)
      const batchId = batches[0]!.batchId
      valueOf(await openDoughKey.call(bakery.early.caller, { batchId }))
      expect(valueOf(await getBatch.call(bakery.early.caller, { batchId })).key!.mixing).toEqual({ outcome: 'damaged' })
    }
  })

  it('leaves the floor its batch, with allergens, and its readings', async () => {
    const { batches, measures } = await trialWith((text) => later(text))
    const batchId = batches[0]!.batchId
    valueOf(await openDoughKey.call(bakery.early.caller, { batchId }))
    const shown = valueOf(await getBatch.call(bakery.early.caller, { batchId }))
    expect(shown.key!.mixing).toEqual({ outcome: 'unknown-format', format: 1000 })
    expect(shown.cautions.allergens).toContain('gluten')
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: shown.revision, cleanDownDone: true }))
    valueOf(
      await logReading.call(bakery.early.caller, {
        id: uuid(),
        batchId,
        measureId: measures['dough-temp'],
        repeat: 1,
        value: '26',
        unit: '°C',
        takenAt: testNow.toISOString(),
      }),
    )
  })
})

describe('evidence that cannot be read', () => {
  const decisionWith = async (change: (text: string) => { text: string; hash: string }) => {
    const { trialId, revision } = await makeEndedTrial(bakery)
    valueOf(await keepFormula.call(bakery.head.caller, { trialId, seenRevision: revision, reason: 'Good as it is.' }))
    const kept = await db().decision.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, trialId },
      include: { evidence: true },
    })
    const { text, hash } = change(kept.evidence.text)
    const {
      evidence: { id: _, ...evidence },
      ...decision
    } = kept
    const [evidenceId, decisionId] = [uuid(), uuid()]
    await db().evidence.create({ data: { ...evidence, id: evidenceId, text, hash } })
    await db().decision.create({
      data: {
        ...decision,
        id: decisionId,
        number: decision.number + 1,
        evidenceId,
        takenBackAt: testNow,
        takenBackById: bakery.head.personId,
        takenBackWhy: 'to try again',
      },
    })
    return decisionId
  }

  it('is left out of its decision, which says why and is else as it was', async () => {
    const decisionId = await decisionWith((text) => later(text))
    const shown = valueOf(await getDecision.call(bakery.owner.caller, { decisionId }))
    expect(shown).toMatchObject({
      evidence: null,
      unread: { outcome: 'unknown-format', format: 1000 },
      reason: 'Good as it is.',
      haveReadingsChanged: false,
    })
  })

  it('is not shown when it is damaged', async () => {
    const decisionId = await decisionWith((text) => ({ text: `${text} `, hash: hashOfText(text) }))
    expect(valueOf(await getDecision.call(bakery.owner.caller, { decisionId }))).toMatchObject({
      evidence: null,
      unread: { outcome: 'damaged' },
    })
  })
})

describe('a version that cannot be read', () => {
  /** A formula of which the second version is signed, with a text that became something else. */
  const formulaWith = async (change: (text: string) => { text: string; hash: string }) => {
    const { formulaId, versionId: firstId } = await makeTrialStores(bakery)
    const { versionId } = valueOf(
      await draftVersion.call(bakery.head.caller, { fromVersionId: firstId, reason: 'Softer.' }),
    )
    const { contentText } = await db().formulaVersion.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: firstId } },
      select: { contentText: true },
    })
    const { text, hash } = change(contentText!)
    await db().formulaVersion.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: versionId } },
      data: { contentText: text, contentHash: hash, signedAt: testNow, effectiveAt: testNow },
    })
    return { formulaId, firstId, versionId }
  }

  it('is said to be in a format that is not known, by itself and beside another, and its formula is there', async () => {
    const { formulaId, firstId, versionId } = await formulaWith((text) => later(text))
    expect(await getVersion.call(bakery.owner.caller, { formulaId, versionId })).toMatchObject(unknown)
    expect(
      await compareVersions.call(bakery.owner.caller, { formulaId, fromId: firstId, toId: versionId }),
    ).toMatchObject(unknown)
    expect(valueOf(await getFormula.call(bakery.owner.caller, { formulaId })).versions).toHaveLength(2)
    expect(valueOf(await getVersion.call(bakery.owner.caller, { formulaId, versionId: firstId })).isWhole).toBe(true)
  })

  it('lets nobody sign what would follow it, because nobody can say what changes', async () => {
    const { formulaId, firstId } = await formulaWith((text) => later(text))
    const next = valueOf(await draftVersion.call(bakery.head.caller, { fromVersionId: firstId, reason: 'Back again.' }))
    expect(await getVersion.call(bakery.owner.caller, { formulaId, versionId: next.versionId })).toMatchObject(unknown)
    const before = await db().signature.count({ where: { bakeryId: bakery.bakeryId } })
    const row = await readVersion(db(), bakery.bakeryId, next.versionId)
    const sent = {
      versionId: next.versionId,
      seenRevision: row!.revision,
      seenHash: contentAsItIsNow(row!).hash,
      effectiveAt: null,
    }
    expect(await signOffVersion.call(bakery.owner.caller, sent)).toMatchObject(unknown)
    expect(await db().signature.count({ where: { bakeryId: bakery.bakeryId } })).toBe(before)
  })

  it('is said to be damaged when it is no version at all', async () => {
    const { formulaId, versionId } = await formulaWith(() => ({ text: '{}', hash: hashOfText('{}') }))
    expect(await getVersion.call(bakery.owner.caller, { formulaId, versionId })).toMatchObject(damaged)
  })
})

describe('an entry of the record that cannot be read', () => {
  it('is said so in its place, the record ends there for this code, and goes on being written', async () => {
    const { bakeryId } = bakery
    const rename = async (bakeryName: string) => {
      const { name: _, revision, ...rest } = valueOf(await getSettings.call(bakery.owner.caller, {}))
      return changeSettings.call(bakery.owner.caller, { ...rest, bakeryName, seenRevision: revision })
    }
    valueOf(await rename('Mill Row East'))
    const last = await db().auditEntry.findFirstOrThrow({ where: { bakeryId }, orderBy: { number: 'desc' } })
    const { text, hash } = later(last.entryText.replace(`"number":"${last.number}"`, `"number":"${last.number + 1n}"`))
    await db().auditEntry.create({
      data: { ...last, number: last.number + 1n, entryText: text, previousHash: last.hash, hash },
    })
    await db().auditHead.update({ where: { bakeryId }, data: { number: last.number + 1n, hash } })
    valueOf(await rename('Mill Row West'))

    const { entries, fault } = valueOf(await listRecord.call(bakery.owner.caller, {}))
    expect(entries.count).toBe(Number(last.number) + 2)
    expect(entries.rows.map(({ said }) => said.outcome).slice(0, 3)).toEqual(['read', 'unknown-format', 'read'])
    expect(fault).toEqual({ number: Number(last.number) + 1, why: 'unknown-format' })
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {})).fault).toEqual(fault)
  })
})
