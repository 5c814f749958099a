import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { readEvidence } from '@/lib/documents/evidence/read-evidence'
import { readManifest } from '@/lib/documents/evidence/read-manifest'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import type { Caller } from '@/lib/kitchen/caller'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { getChoices } from '@/lib/kitchen/decisions/get-choices'
import { getDecision } from '@/lib/kitchen/decisions/get-decision'
import { listDecisions } from '@/lib/kitchen/decisions/list-decisions'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import { takeBack } from '@/lib/kitchen/decisions/take-back'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { changeDraft } from '@/lib/kitchen/formulas/change-draft'
import { discardDraft } from '@/lib/kitchen/formulas/discard-draft'
import { draftVersion } from '@/lib/kitchen/formulas/draft-version'
import { getEditor } from '@/lib/kitchen/formulas/get-editor'
import { getFormula } from '@/lib/kitchen/formulas/get-formula'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())

const reason = 'Larger, and the crumb holds.'
const asked = ({ trialId, revision, armIds }: EndedTrial, arm: number | null = 1) => ({
  trialId,
  seenRevision: revision,
  reason,
  ...(arm === null ? {} : { armId: armIds[arm] }),
})
const change = async (trial: EndedTrial, arm = 1, caller = bakery.head.caller) =>
  valueOf(await draftChange.call(caller, asked(trial, arm)))
const look = async (caller: Caller, { formulaId, versionId }: { formulaId: string; versionId: string }) =>
  valueOf(await getVersion.call(caller, { formulaId, versionId }))
async function sign(caller: Caller, key: { formulaId: string; versionId: string }) {
  const { revision, contentHash } = await look(caller, key)
  return signOffVersion.call(caller, {
    versionId: key.versionId,
    seenRevision: revision,
    seenHash: contentHash,
    effectiveAt: null,
  })
}
const evidenceOf = async (decisionId: string) =>
  (
    await db().decision.findFirstOrThrow({
      where: { id: decisionId },
      select: { evidence: { select: { text: true, hash: true, parts: true } } },
    })
  ).evidence
const evidenceIn = ({ text, hash, parts }: Awaited<ReturnType<typeof evidenceOf>>) => {
  const read = readEvidence(text, hash, parts)
  if (read.outcome !== 'read') throw new Error(read.outcome)
  return read.evidence
}
const count = (trialId: string) => db().decision.count({ where: { trialId } })

describe('a change drafted from an arm', () => {
  it('has the arm’s planned masses as percentages, and batch, process and method of the control', async () => {
    const trial = await makeEndedTrial(bakery)
    const key = await change(trial)
    const seen = await look(bakery.early.caller, key)
    const control = await look(bakery.early.caller, { formulaId: key.formulaId, versionId: trial.stores.versionId })
    const planned = trial.plannedG[1]!
    const flourG = planned
      .filter(({ ingredientId }) => ingredientId === trial.stores.ids.flour)
      .reduce((sum, { massG }) => sum + massG, 0)
    const drafted = seen.content.stages.flatMap(({ lines }) =>
      lines.map(({ ingredient, pctFlour }) => [ingredient.id, pctFlour]),
    )
    expect(drafted).toEqual(
      planned
        .filter(({ massG }) => massG > 0)
        .map(({ ingredientId, massG }) => [ingredientId, expect.closeTo((100 * massG) / flourG, 6)]),
    )
    expect(drafted).toContainEqual([trial.stores.ids.malt, 0.6])
    expect(seen).toMatchObject({
      state: 'draft',
      number: 2,
      draftedBy: 'Henk',
      content: {
        version: { from: trial.stores.versionId, reason },
        batch: control.content.batch,
        process: control.content.process,
      },
    })
  })

  it('freezes what the result and its costs showed, to the last digit', async () => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId } = await change(trial)
    const kept = await evidenceOf(decisionId)
    const { text, hash, parts } = kept
    const sha256 = (of: string) => createHash('sha256').update(of, 'utf8').digest('hex')
    expect(sha256(text)).toBe(hash)
    const evidence = evidenceIn(kept)
    const read = readManifest(text, hash)
    const named = read.outcome === 'read' ? read.value.parts : []
    expect(named).toHaveLength(6)
    for (const part of named) expect(sha256(parts.find(({ kind }) => kind === part.kind)!.text)).toBe(part.hash)
    expect(readEvidence(`${text} `, hash, parts)).toEqual({ outcome: 'damaged' })
    const spoilt = parts.map((part) => ({
      ...part,
      text: part.text.replace('"verdict":"better"', '"verdict":"worse"'),
    }))
    expect(readEvidence(text, hash, spoilt)).toEqual({ outcome: 'damaged' })
    expect(
      readEvidence(
        text,
        hash,
        parts.filter(({ kind }) => kind !== 'costs'),
      ),
    ).toMatchObject({
      outcome: 'read',
      evidence: { costs: null },
    })
    const { analysis } = valueOf(await getResult.call(bakery.early.caller, { trialId: trial.trialId }))
    const { costs } = valueOf(await getResult.call(bakery.owner.caller, { trialId: trial.trialId }))
    expect(evidence.costs).toMatchObject(costs!)
    expect(evidence.arms.map(({ id: _, name: __, good: ___, ...arm }) => arm)).toEqual(analysis.comparison!.arms)
    expect(evidence.arms.map(({ id }) => id)).toEqual(trial.armIds)
    expect(JSON.parse(parts.find(({ kind }) => kind === 'shown')!.text)).toMatchObject({
      method: analysis.comparison!.method,
      worthwhile: analysis.comparison!.worthwhile,
      points: analysis.comparison!.points,
    })
    expect(parts.find(({ kind }) => kind === 'closing')!.text).toBe(
      (await db().closing.findFirstOrThrow({ where: { trialId: trial.trialId } })).text,
    )
    expect(evidence).toMatchObject({
      isIndication: false,
      trial: { number: trial.number, state: 'closed', question: 'Does malt make the tin loaf larger?' },
      declared: { kind: 'gain', margin: 5, marginUnit: 'pct', confidencePct: 95, piecesPerBatch: 4 },
      // Nine doughs, each with its temperature and four loaves of one weight and two volumes.
      readings: { count: 9 * 13 },
      frozen: { at: testNow.toISOString(), by: { name: 'Henk' } },
    })
    expect(evidence.arms[1]).toMatchObject({ verdict: { verdict: 'better' }, good: { pieces: 12, batches: 3 } })
  })

  it('is not editable, because it is what was baked, and neither dropped but by taking the decision back', async () => {
    const key = await change(await makeEndedTrial(bakery))
    expect(await look(bakery.owner.caller, key)).toMatchObject({ mayChange: false, decision: { id: key.decisionId } })
    expect(
      refusalOf(
        await getEditor.call(bakery.owner.caller, { draft: { formulaId: key.formulaId, versionId: key.versionId } }),
      ),
    ).toBe('drafted-from-trial')
    const { stages } = (await look(bakery.owner.caller, key)).content
    const typed = {
      versionId: key.versionId,
      seenRevision: 1,
      reason: 'x',
      pieces: 12,
      scalingMassG: 850,
      doughLossPct: 2,
      doughTempC: 26,
      mixTimeMin: 10,
      bulkTimeMin: 60,
      proofTimeMin: 50,
      bakeTempC: 220,
      bakeTimeMin: 35,
      method: '',
      stages: stages.map(({ kind, name, lines }) => ({
        kind,
        name,
        lines: lines.map(({ ingredient, pctFlour }) => ({ ingredientId: ingredient.id, pctFlour })),
      })),
    }
    expect(refusalOf(await changeDraft.call(bakery.owner.caller, typed))).toBe('drafted-from-trial')
    expect(refusalOf(await discardDraft.call(bakery.owner.caller, { versionId: key.versionId, seenRevision: 1 }))).toBe(
      'decided-draft',
    )
    const copy = valueOf(
      await draftVersion.call(bakery.owner.caller, { fromVersionId: key.versionId, reason: 'A little less' }),
    )
    expect(await look(bakery.owner.caller, copy)).toMatchObject({ mayChange: true, decision: null })
    expect((await look(bakery.owner.caller, copy)).content.evidence).toBeUndefined()
  })

  it('is refused for the control, an arm that is not of the trial, one that was never measured, and what has left the stores', async () => {
    const trial = await makeEndedTrial(bakery, { unmeasured: 2 })
    const other = await makeEndedTrial(bakery, { stores: trial.stores })
    expect(refusalOf(await draftChange.call(bakery.head.caller, asked(trial, 0)))).toBe(
      'invalid armId:control-is-no-change',
    )
    expect(refusalOf(await draftChange.call(bakery.head.caller, { ...asked(trial), armId: other.armIds[1] }))).toBe(
      'invalid armId:wrong-choice',
    )
    expect(refusalOf(await draftChange.call(bakery.head.caller, asked(trial, 2)))).toBe(
      'invalid armId:arm-not-measured',
    )
    expect(
      refusalOf(await draftChange.call(bakery.head.caller, { ...asked(trial), reason: ' ', armId: undefined })),
    ).toBe('invalid reason:missing armId:missing')
    const where = { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.stores.ids.malt } }
    await db().ingredient.update({ where, data: { endedAt: testNow } })
    expect(await draftChange.call(bakery.head.caller, asked(trial))).toMatchObject({
      refusal: { problems: [{ path: 'armId', code: 'arm-ingredient-ended', facts: { names: ['Malt powder'] } }] },
    })
    await db().ingredient.update({ where, data: { endedAt: null } })
    expect([await count(trial.trialId), await db().evidence.count({ where: { trialId: trial.trialId } })]).toEqual([
      0, 0,
    ])
    const baking = await makeEndedTrial(bakery, { stores: trial.stores, state: 'baking' })
    expect(refusalOf(await draftChange.call(bakery.head.caller, asked(baking)))).toBe('trial-not-ended')
    expect(refusalOf(await keepFormula.call(bakery.head.caller, asked(baking, null)))).toBe('trial-not-ended')
    expect(
      refusalOf(await draftChange.call(bakery.head.caller, { ...asked(trial), seenRevision: trial.revision + 1 })),
    ).toMatch(/^stale/)
  })

  it('may come from a trial that was stopped early, and the evidence says that it is an indication', async () => {
    const { decisionId } = await change(await makeEndedTrial(bakery, { state: 'stopped' }))
    expect(evidenceIn(await evidenceOf(decisionId))).toMatchObject({
      isIndication: true,
      trial: { state: 'stopped', closedWhy: 'The oven is broken.' },
    })
  })
})

describe('two people who decide', () => {
  it('at the same moment make one decision, and the other is told who did', async () => {
    const trial = await makeEndedTrial(bakery)
    const results = await Promise.all([
      draftChange.call(bakery.head.caller, asked(trial)),
      keepFormula.call(bakery.owner.caller, asked(trial, null)),
      draftChange.call(bakery.owner.caller, asked(trial, 2)),
    ])
    expect(results.filter(({ ok }) => ok)).toHaveLength(1)
    expect(results.filter(({ ok }) => !ok).map(refusalOf)).toEqual(['already-decided', 'already-decided'])
    expect(await count(trial.trialId)).toBe(1)
    const late = await keepFormula.call(bakery.owner.caller, asked(trial, null))
    expect(late).toMatchObject({
      refusal: { code: 'already-decided', facts: { who: expect.stringMatching(/^(Henk|Olga)$/) } },
    })
  })

  it('on different trials at the same moment get different numbers', async () => {
    const first = await makeEndedTrial(bakery)
    const trials = [first, await makeEndedTrial(bakery, { stores: first.stores })]
    const decided = await Promise.all(trials.map((trial) => draftChange.call(bakery.head.caller, asked(trial))))
    const numbers = await db().decision.findMany({
      where: { id: { in: decided.map((each) => valueOf(each).decisionId) } },
      select: { number: true, version: { select: { number: true } } },
    })
    expect(new Set(numbers.map(({ number }) => number)).size).toBe(trials.length)
    expect(numbers.map(({ version }) => version!.number).sort()).toEqual([2, 3])
  })

  it('cannot be two in the database either', async () => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId } = valueOf(await keepFormula.call(bakery.head.caller, asked(trial, null)))
    const row = await db().decision.findFirstOrThrow({ where: { id: decisionId } })
    const evidence = await db().evidence.create({
      data: {
        bakeryId: bakery.bakeryId,
        id: uuid(),
        trialId: trial.trialId,
        text: '{}',
        hash: 'a'.repeat(64),
        frozenById: bakery.head.personId,
        at: testNow,
      },
    })
    await expect(
      db().decision.create({ data: { ...row, id: uuid(), number: row.number + 1000, evidenceId: evidence.id } }),
    ).rejects.toThrow()
    const baking = await makeEndedTrial(bakery, { stores: trial.stores, state: 'baking' })
    await connected(database.ownerUrl, (client) =>
      expect(
        client.query(
          `INSERT INTO decision SELECT bakery_id, gen_random_uuid(), number + 2000, '${baking.trialId}', outcome, arm_id, version_id, evidence_id, reason, decided_by_id, at, NULL, NULL, NULL, 1 FROM decision WHERE id = '${decisionId}'`,
        ),
      ).rejects.toMatchObject({ code: 'EV004' }),
    )
  })
})

describe('signing', () => {
  it('of a change that costs more than the bakery’s limit needs the owner and the head baker, and says why in their words', async () => {
    const trial = await makeEndedTrial(bakery)
    const key = await change(trial)
    const seen = await look(bakery.head.caller, key)
    // By hand: malt at 4 a kg for 0.6 % beside flour at 0.8 and what else is in it is a little more than 2 %.
    expect(seen.signing).toMatchObject({
      needed: ['owner', 'head_baker'],
      grave: 'cost',
      change: { added: [], gone: [] },
      meaning: 'cost-proposer',
      bar: null,
      isLast: false,
      cost: { limitPct: 1, isBeyondLimit: true, day: '2026-03-02', currency: 'EUR' },
    })
    const [control] = trial.plannedG
    const price: Record<string, number> = Object.fromEntries(
      [
        ['flour', 0.8],
        ['water', 0],
        ['salt', 0.5],
        ['yeast', 3],
        ['oil', 2],
        ['malt', 4],
      ].map(([name, perKg]) => [trial.stores.ids[name as 'flour'], perKg as number]),
    )
    const costOf = (lines: typeof control) =>
      lines!.reduce((sum, { ingredientId, massG }) => sum + (massG * price[ingredientId]!) / 1000, 0) /
      lines!.reduce((sum, { massG }) => sum + massG, 0)
    // 12 loaves of 850 g out of 2 % more dough.
    const loaf = (lines: typeof control) => (costOf(lines) * 850) / 0.98
    expect(Number(seen.signing!.cost!.before)).toBeCloseTo(loaf(control), 9)
    expect(Number(seen.signing!.cost!.after)).toBeCloseTo(loaf(trial.plannedG[1]), 6)
    expect(seen.signing!.cost!.differencePct).toBeCloseTo(100 * (loaf(trial.plannedG[1]) / loaf(control) - 1), 4)

    expect(refusalOf(await sign(callerOf(bakery.head.sessionSecret, testNow, 'not it'), key))).toBe(
      'wrong-password password:not-your-password',
    )
    expect(refusalOf(await signOffVersion.call(bakery.early.caller, {}))).toBe('not-allowed')
    valueOf(await sign(bakery.head.caller, key))
    expect(refusalOf(await sign(bakery.head.caller, key))).toBe('already-signed')
    valueOf(await sign(bakery.owner.caller, key))
    const signed = await look(bakery.owner.caller, key)
    expect(signed).toMatchObject({ state: 'in-production', isWhole: true, signing: null })
    expect(signed.signatures.map(({ meaning }) => meaning).sort()).toEqual([
      expect.stringContaining(
        'As the owner I have read this version whole, know that it changes the ingredient cost of a loaf beyond the bakery’s limit',
      ),
      expect.stringContaining('I drafted this version, know that it changes the ingredient cost'),
    ])
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {})).fault).toBeNull()
  })

  it('of new allergens and another cost names both', async () => {
    const key = await change(await makeEndedTrial(bakery), 2)
    expect((await look(bakery.head.caller, key)).signing).toMatchObject({
      grave: 'both',
      change: { added: ['milk'] },
      meaning: 'both-proposer',
    })
  })

  it('of a change within the limit needs one second person, who is not the one who drafted it', async () => {
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { costChangeLimitPct: 50 } })
    const key = await change(await makeEndedTrial(bakery))
    expect((await look(bakery.head.caller, key)).signing).toMatchObject({
      needed: ['second-person'],
      grave: null,
      bar: 'own-proposal',
    })
    expect(refusalOf(await sign(bakery.head.caller, key))).toBe('own-proposal')
    valueOf(await sign(bakery.owner.caller, key))
  })

  it('of a cost that nobody knows needs the owner too', async () => {
    const { formulaId, versionId } = await change(await makeEndedTrial(bakery))
    await db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { costChangeLimitPct: 100 } })
    expect((await look(bakery.head.caller, { formulaId, versionId })).signing).toMatchObject({ grave: null })
    const malt = await db().ingredient.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, name: 'Malt powder' } })
    // Prices only ever grow, so this one gets a later one in another currency: then there is no sum.
    await db().price.create({
      data: {
        bakeryId: bakery.bakeryId,
        id: uuid(),
        ingredientId: malt.id,
        holdsFrom: new Date('2026-02-01'),
        packMassG: 1000,
        packPrice: '4',
        currency: 'GBP',
        supplier: 'invented',
        enteredById: bakery.owner.personId,
        enteredAt: testNow,
      },
    })
    expect((await look(bakery.head.caller, { formulaId, versionId })).signing).toMatchObject({
      grave: 'cost',
      cost: { after: null, difference: null, mixedCurrencies: true },
    })
  })

  it('binds the evidence: what is signed holds its hash', async () => {
    const key = await change(await makeEndedTrial(bakery))
    const { hash } = await evidenceOf(key.decisionId)
    const seen = await look(bakery.head.caller, key)
    expect(seen.content.evidence).toEqual({ decision: key.decisionId, hash })
    valueOf(await sign(bakery.head.caller, key))
    valueOf(await sign(bakery.owner.caller, key))
    const { contentText, contentHash } = await db().formulaVersion.findFirstOrThrow({ where: { id: key.versionId } })
    expect(contentText).toContain(hash)
    expect(contentHash).toBe(seen.contentHash)
  })

  it('shows a shift baker who must sign, and no amount', async () => {
    const key = await change(await makeEndedTrial(bakery))
    expect((await look(bakery.early.caller, key)).signing).toMatchObject({
      needed: ['owner', 'head_baker'],
      cost: null,
      bar: 'no-right',
    })
  })
})

describe('keeping the formula', () => {
  it('keeps reason and evidence and changes nothing', async () => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId } = valueOf(await keepFormula.call(bakery.head.caller, asked(trial, null)))
    const decision = await db().decision.findFirstOrThrow({ where: { id: decisionId } })
    expect(decision).toMatchObject({ outcome: 'keep', armId: null, versionId: null, reason, revision: 1 })
    expect(evidenceIn(await evidenceOf(decisionId)).arms).toHaveLength(3)
    expect(
      valueOf(await getFormula.call(bakery.early.caller, { formulaId: trial.stores.formulaId })).versions,
    ).toHaveLength(1)
  })

  it('is all that is possible when nothing was measured, and the evidence says so', async () => {
    const trial = await makeEndedTrial(bakery, { state: 'baking' })
    // What is measured is not lost, also to the database: it goes back first.
    await db().batch.updateMany({ where: { trialId: trial.trialId, state: 'measured' }, data: { state: 'baked' } })
    await db().batch.updateMany({
      where: { trialId: trial.trialId },
      data: { state: 'lost', stateWhy: 'The oven is broken.' },
    })
    await db().trial.updateMany({
      where: { id: trial.trialId },
      data: { state: 'stopped', closedAt: testNow, closedWhy: 'The oven is broken.' },
    })
    expect(refusalOf(await draftChange.call(bakery.head.caller, asked(trial)))).toBe('invalid armId:arm-not-measured')
    const { decisionId } = valueOf(await keepFormula.call(bakery.head.caller, asked(trial, null)))
    const { evidence } = valueOf(await getDecision.call(bakery.early.caller, { decisionId }))
    expect(evidence!.limits.map(({ code }) => code)).toContain('no-control')
    expect(evidence).toMatchObject({
      controlMean: null,
      arms: [{ batches: 0, mean: null }, { batches: 0 }, { batches: 0 }],
    })
  })
})

describe('taking back', () => {
  const back = (decisionId: string, more = {}) => ({
    decisionId,
    seenRevision: 1,
    reason: 'Bake it again first.',
    ...more,
  })

  it('drops the draft, signatures or not, and lets somebody decide anew', async () => {
    const trial = await makeEndedTrial(bakery)
    const key = await change(trial)
    valueOf(await sign(bakery.head.caller, key))
    expect(refusalOf(await takeBack.call(bakery.owner.caller, back(key.decisionId, { seenRevision: 2 })))).toMatch(
      /^stale/,
    )
    expect((await look(bakery.owner.caller, key)).state).toBe('draft')
    valueOf(await takeBack.call(bakery.owner.caller, back(key.decisionId)))
    expect(await look(bakery.owner.caller, key)).toMatchObject({
      state: 'discarded',
      signing: null,
      mayChange: false,
      signatures: [{ personName: 'Henk' }],
    })
    expect(await db().decision.findFirst({ where: { id: key.decisionId } })).toMatchObject({
      takenBackWhy: 'Bake it again first.',
      takenBackById: bakery.owner.personId,
      revision: 2,
    })
    expect(refusalOf(await sign(bakery.owner.caller, key))).toBe('discarded')
    expect(refusalOf(await takeBack.call(bakery.owner.caller, back(key.decisionId, { seenRevision: 2 })))).toMatch(
      /^stale/,
    )
    const again = await change(trial, 2)
    expect((await look(bakery.owner.caller, again)).number).toBe(3)
    const { versions } = valueOf(await getFormula.call(bakery.early.caller, { formulaId: key.formulaId }))
    expect(versions.map(({ number, state, decision }) => [number, state, decision?.id ?? null])).toEqual([
      [3, 'draft', again.decisionId],
      [2, 'discarded', key.decisionId],
      [1, 'in-production', null],
    ])
  })

  it('is possible for a kept formula, and not once a change is signed off', async () => {
    const trial = await makeEndedTrial(bakery)
    const kept = valueOf(await keepFormula.call(bakery.head.caller, asked(trial, null)))
    valueOf(await takeBack.call(bakery.head.caller, back(kept.decisionId)))
    const key = await change(trial)
    valueOf(await sign(bakery.head.caller, key))
    valueOf(await sign(bakery.owner.caller, key))
    expect(refusalOf(await takeBack.call(bakery.owner.caller, back(key.decisionId)))).toBe('signed')
    expect(refusalOf(await takeBack.call(bakery.owner.caller, back(key.decisionId, { reason: '  ' })))).toBe(
      'invalid reason:missing',
    )
  })

  it('and the last signature at the same moment never both win', async () => {
    const trial = await makeEndedTrial(bakery)
    for (let round = 0; round < 4; round++) {
      const key = await change(trial)
      valueOf(await sign(bakery.head.caller, key))
      const [signed, taken] = await Promise.all([
        sign(bakery.owner.caller, key),
        takeBack.call(bakery.head.caller, back(key.decisionId)),
      ])
      expect([signed.ok, taken.ok].filter(Boolean)).toHaveLength(1)
      expect((await look(bakery.owner.caller, key)).state).toBe(signed.ok ? 'in-production' : 'discarded')
      if (signed.ok) break
    }
  })
})

describe('a draft that nobody signed', () => {
  it('is dropped once, and then neither changed nor signed', async () => {
    const { stores } = await makeEndedTrial(bakery)
    const key = valueOf(
      await draftVersion.call(bakery.head.caller, { fromVersionId: stores.versionId, reason: 'A try' }),
    )
    const drop = { versionId: key.versionId, seenRevision: 1 }
    expect(refusalOf(await discardDraft.call(bakery.early.caller, drop))).toBe('not-allowed')
    expect(refusalOf(await discardDraft.call(bakery.owner.caller, { ...drop, seenRevision: 2 }))).toMatch(/^stale/)
    valueOf(await discardDraft.call(bakery.owner.caller, drop))
    expect(await look(bakery.owner.caller, key)).toMatchObject({ state: 'discarded', signing: null, mayChange: false })
    expect(refusalOf(await discardDraft.call(bakery.owner.caller, { ...drop, seenRevision: 2 }))).toBe('discarded')
    expect(refusalOf(await sign(bakery.owner.caller, key))).toBe('discarded')
    expect(refusalOf(await getEditor.call(bakery.owner.caller, { draft: key }))).toBe('discarded')
    expect(
      refusalOf(await discardDraft.call(bakery.owner.caller, { versionId: stores.versionId, seenRevision: 1 })),
    ).toBe('signed')
  })
})

describe('what is kept', () => {
  it('of evidence and decisions nobody changes, by the app’s role or the owner’s', async () => {
    const trial = await makeEndedTrial(bakery)
    const key = await change(trial)
    const statements = [
      [`UPDATE evidence SET text = '{}'`, 'EV001'],
      [`DELETE FROM evidence`, 'EV001'],
      [`UPDATE decision SET reason = 'x' WHERE id = '${key.decisionId}'`, 'EV004'],
      [`UPDATE decision SET evidence_id = gen_random_uuid() WHERE id = '${key.decisionId}'`, 'EV004'],
      [`DELETE FROM decision WHERE id = '${key.decisionId}'`, 'EV004'],
    ] as const
    for (const url of [database.appUrl, database.ownerUrl]) {
      await connected(url, async (client) => {
        for (const [statement, code] of statements) {
          await expect(client.query(statement), statement).rejects.toMatchObject({
            code: url === database.appUrl && code === 'EV001' ? '42501' : code,
          })
        }
      })
    }
    valueOf(await takeBack.call(bakery.owner.caller, { decisionId: key.decisionId, seenRevision: 1, reason: 'x' }))
    await connected(database.ownerUrl, async (client) => {
      await expect(
        client.query(
          `UPDATE decision SET taken_back_at = NULL, taken_back_by_id = NULL, taken_back_why = NULL WHERE id = '${key.decisionId}'`,
        ),
      ).rejects.toMatchObject({ code: 'EV004' })
      await expect(
        client.query(`UPDATE formula_version SET discarded_at = NULL WHERE id = '${key.versionId}'`),
      ).rejects.toMatchObject({ code: 'EV004' })
    })
  })
})

describe('who may not', () => {
  it('is a shift baker', async () => {
    const trial = await makeEndedTrial(bakery)
    expect(refusalOf(await draftChange.call(bakery.early.caller, asked(trial)))).toBe('not-allowed')
    expect(refusalOf(await keepFormula.call(bakery.early.caller, asked(trial, null)))).toBe('not-allowed')
    expect(refusalOf(await takeBack.call(bakery.early.caller, {}))).toBe('not-allowed')
  })

  it('is a neighbour, who finds nothing, as if there were nothing', async () => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId, versionId } = await change(trial)
    for (const id of [trial.trialId, uuid()]) {
      expect(refusalOf(await draftChange.call(neighbour.owner.caller, { ...asked(trial), trialId: id }))).toBe(
        'not-found',
      )
      expect(refusalOf(await keepFormula.call(neighbour.owner.caller, { ...asked(trial, null), trialId: id }))).toBe(
        'not-found',
      )
    }
    for (const id of [decisionId, uuid()])
      expect(
        refusalOf(await takeBack.call(neighbour.owner.caller, { decisionId: id, seenRevision: 1, reason: 'x' })),
      ).toBe('not-found')
    for (const id of [versionId, uuid()])
      expect(refusalOf(await discardDraft.call(neighbour.owner.caller, { versionId: id, seenRevision: 1 }))).toBe(
        'not-found',
      )
  })
})

describe('looking at decisions', () => {
  it('puts what waits first, with whose signatures are missing, and everything where it stands', async () => {
    const first = await makeEndedTrial(bakery)
    const kept = valueOf(await keepFormula.call(bakery.head.caller, asked(first, null)))
    const second = await makeEndedTrial(bakery, { stores: first.stores })
    const dropped = await change(second)
    valueOf(
      await takeBack.call(bakery.head.caller, {
        decisionId: dropped.decisionId,
        seenRevision: 1,
        reason: 'Wrong dough.',
      }),
    )
    const waiting = await change(second)
    valueOf(await sign(bakery.head.caller, waiting))
    const list = valueOf(await listDecisions.call(bakery.early.caller, {}))
    expect(list.waiting.rows).toMatchObject([
      {
        id: waiting.decisionId,
        missing: ['owner'],
        arm: 'malt, 0.6 %',
        version: { number: 3 },
        decidedBy: 'Henk',
        trialNumber: 2,
      },
    ])
    expect(list.kept.rows.map(({ id }) => id)).toEqual([kept.decisionId])
    expect(list.takenBack.rows).toMatchObject([{ id: dropped.decisionId, takenBackWhy: 'Wrong dough.' }])
    valueOf(await sign(bakery.owner.caller, waiting))
    expect(valueOf(await listDecisions.call(bakery.early.caller, {}))).toMatchObject({
      waiting: { rows: [], count: 0 },
      signed: { rows: [{ id: waiting.decisionId }], count: 1 },
      kept: { count: 1 },
      takenBack: { count: 1 },
    })
    expect(valueOf(await listDecisions.call(neighbour.owner.caller, {}))).toMatchObject({
      waiting: { count: 0 },
      signed: { count: 0 },
      kept: { count: 0 },
      takenBack: { count: 0 },
    })
  })

  it('shows the change against the control, with costs for those who see them and no trace of them for others', async () => {
    const { decisionId } = await change(await makeEndedTrial(bakery))
    const seen = valueOf(await getDecision.call(bakery.owner.caller, { decisionId }))
    expect(seen).toMatchObject({
      state: 'waiting',
      mayTakeBack: true,
      haveReadingsChanged: false,
      control: { number: 1 },
      inProduction: { number: 1 },
    })
    expect(seen.change!.lines.find(({ ingredientName }) => ingredientName === 'Malt powder')).toMatchObject({
      fromPct: null,
      toPct: 0.6,
    })
    expect(seen.change!.cost).toMatchObject({ currency: 'EUR', day: '2026-03-02', isBeyondLimit: true })
    expect(seen.evidence!.costs!.arms).toHaveLength(3)
    const baker = valueOf(await getDecision.call(bakery.early.caller, { decisionId }))
    expect(baker).toMatchObject({ mayTakeBack: false, change: { cost: null }, evidence: { costs: null } })
    const text = JSON.stringify(baker)
    for (const amount of [
      seen.change!.cost!.before!,
      seen.change!.cost!.after!,
      seen.evidence!.costs!.arms[1]!.perBatch!,
    ])
      expect(text).not.toContain(amount)
    expect(text).not.toContain('perLoaf')
  })

  it('says that readings were changed since, and shows what was frozen all the same', async () => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId } = await change(trial)
    const before = valueOf(await getDecision.call(bakery.early.caller, { decisionId }))
    // Past the guards, as nobody but the database's owner can.
    await connected(database.ownerUrl, (owner) =>
      owner.query(
        `ALTER TABLE reading DISABLE TRIGGER USER;
         UPDATE reading SET content_hash = repeat('c', 64) WHERE id = (
           SELECT id FROM reading WHERE trial_id = '${trial.trialId}' AND measure_id = '${trial.stores.measureIds['loaf-mass']}' LIMIT 1);
         ALTER TABLE reading ENABLE TRIGGER USER`,
      ),
    )
    const after = valueOf(await getDecision.call(bakery.early.caller, { decisionId }))
    expect(after.haveReadingsChanged).toBe(true)
    expect(after.evidence).toEqual(before.evidence)
  })

  it.each([
    ['a part of it', `UPDATE evidence_part SET text = replace(text, '"verdict":"better"', '"verdict":"worse"') WHERE`],
    [
      'a part and its hash',
      `UPDATE evidence_part SET text = replace(text, '"verdict":"better"', '"verdict":"worse"') WHERE kind = 'shown' AND %;
       UPDATE evidence_part SET hash = encode(sha256(convert_to(text, 'UTF8')), 'hex') WHERE`,
    ],
    [
      'it whole, with every hash in it',
      `UPDATE evidence_part SET text = replace(text, '"verdict":"better"', '"verdict":"worse"') WHERE kind = 'shown' AND %;
       UPDATE evidence SET text = replace(evidence.text, evidence_part.hash, encode(sha256(convert_to(evidence_part.text, 'UTF8')), 'hex'))
         FROM evidence_part WHERE evidence_id = id AND kind = 'shown' AND %;
       UPDATE evidence_part SET hash = encode(sha256(convert_to(text, 'UTF8')), 'hex') WHERE %;
       UPDATE evidence SET hash = encode(sha256(convert_to(text, 'UTF8')), 'hex') WHERE id = `,
    ],
  ])('shows no evidence of which somebody changed %s', async (_, change_) => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId } = await change(trial)
    const seen = async () => valueOf(await getDecision.call(bakery.early.caller, { decisionId }))
    expect((await seen()).unread).toBeNull()
    const { id } = await db().evidence.findFirstOrThrow({ where: { trialId: trial.trialId } })
    const where = `evidence_id = '${id}'`
    await connected(database.ownerUrl, (owner) =>
      owner.query(
        `ALTER TABLE evidence DISABLE TRIGGER USER;
         ALTER TABLE evidence_part DISABLE TRIGGER USER;
         ${change_.replaceAll('%', where)} ${change_.endsWith('= ') ? `'${id}'` : where};
         ALTER TABLE evidence_part ENABLE TRIGGER USER;
         ALTER TABLE evidence ENABLE TRIGGER USER`,
      ),
    )
    expect(await seen()).toMatchObject({ evidence: null, unread: { outcome: 'damaged' } })
  })

  it('knows when production has moved on from the trial’s control', async () => {
    const trial = await makeEndedTrial(bakery)
    const { decisionId, formulaId } = await change(trial)
    const other = valueOf(
      await draftVersion.call(bakery.head.caller, { fromVersionId: trial.stores.versionId, reason: 'Same again' }),
    )
    valueOf(await sign(bakery.owner.caller, other))
    expect(valueOf(await getDecision.call(bakery.early.caller, { decisionId }))).toMatchObject({
      control: { number: 1 },
      inProduction: { number: 3 },
      formula: { id: formulaId },
    })
    expect(valueOf(await getChoices.call(bakery.head.caller, { trialId: trial.trialId }))).toMatchObject({
      isEnded: true,
      decision: { id: decisionId, decidedBy: 'Henk' },
      inProduction: { number: 3 },
    })
  })

  it('gives the prices of the day on which a change was signed, however they move later', async () => {
    const trial = await makeEndedTrial(bakery)
    const key = await change(trial)
    valueOf(await sign(bakery.head.caller, key))
    valueOf(await sign(bakery.owner.caller, key))
    const costNow = async () =>
      valueOf(await getDecision.call(bakery.owner.caller, { decisionId: key.decisionId })).change!.cost
    const before = await costNow()
    await db().price.create({
      data: {
        bakeryId: bakery.bakeryId,
        id: uuid(),
        ingredientId: trial.stores.ids.flour,
        holdsFrom: new Date('2026-03-03'),
        packMassG: 1000,
        packPrice: '9',
        currency: 'EUR',
        supplier: 'invented',
        enteredById: bakery.owner.personId,
        enteredAt: testNow,
      },
    })
    expect(await costNow()).toEqual(before)
  })

  it('is ‘not found’ for a neighbour, and on the result of the trial for everybody of the bakery', async () => {
    const trial = await makeEndedTrial(bakery)
    expect(valueOf(await getResult.call(bakery.head.caller, { trialId: trial.trialId }))).toMatchObject({
      decision: null,
      mayDecide: true,
      isEnded: true,
    })
    const { decisionId } = await change(trial)
    expect(valueOf(await getResult.call(bakery.early.caller, { trialId: trial.trialId }))).toMatchObject({
      decision: { id: decisionId, outcome: 'change' },
      mayDecide: false,
    })
    for (const id of [decisionId, uuid()])
      expect(refusalOf(await getDecision.call(neighbour.owner.caller, { decisionId: id }))).toBe('not-found')
    for (const id of [trial.trialId, uuid()])
      expect(refusalOf(await getChoices.call(neighbour.owner.caller, { trialId: id }))).toBe('not-found')
    expect(refusalOf(await getChoices.call(bakery.early.caller, { trialId: trial.trialId }))).toBe('not-allowed')
  })
})
