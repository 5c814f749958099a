import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import type { Caller } from '@/lib/kitchen/caller'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { changeDraft } from '@/lib/kitchen/formulas/change-draft'
import { compareVersions } from '@/lib/kitchen/formulas/compare-versions'
import { draftFormula } from '@/lib/kitchen/formulas/draft-formula'
import { draftVersion } from '@/lib/kitchen/formulas/draft-version'
import { getEditor } from '@/lib/kitchen/formulas/get-editor'
import { getFormula } from '@/lib/kitchen/formulas/get-formula'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { listFormulas } from '@/lib/kitchen/formulas/list-formulas'
import { signOffVersion } from '@/lib/kitchen/formulas/sign-off-version'
import { versionInProduction } from '@/lib/kitchen/formulas/version-in-production'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { enterPrice } from '@/lib/kitchen/stores/enter-price'
import { seedFormulas } from '@/seed/formulas'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { makeIngredients } from '../../support/ingredients'
import { untilSomebodyWaits } from '../../support/until-somebody-waits'

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)
const atMinute = (caller: Caller, count: number): Caller => ({ ...caller, now: () => minutes(count) })

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let ids: Awaited<ReturnType<typeof makeIngredients>>
let neighbourIds: typeof ids
let names = 0

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
  ids = await makeIngredients(bakery.bakeryId)
  neighbourIds = await makeIngredients(neighbour.bakeryId)
})
afterAll(() => database.drop())

type Line = { ingredientId: string; pctFlour: number }
const content = (lines: Line[]) => ({
  pieces: 10,
  scalingMassG: 800,
  doughLossPct: 0,
  doughTempC: 26,
  mixTimeMin: 9.5,
  bulkTimeMin: 60,
  proofTimeMin: 50,
  bakeTempC: 220,
  bakeTimeMin: 35,
  method: 'Mix and bake.',
  stages: [{ kind: 'final_dough', name: '', lines }],
})
const plain = (of = ids): Line[] => [
  { ingredientId: of.breadFlour, pctFlour: 100 },
  { ingredientId: of.water, pctFlour: 60 },
  { ingredientId: of.salt, pctFlour: 1.8 },
]
const withMilk = (): Line[] => [...plain(), { ingredientId: ids.milk, pctFlour: 5 }]

const draftBy = async (caller: Caller, lines = plain()) =>
  valueOf(
    await draftFormula.call(caller, { name: `Tin ${(names += 1)}`, reason: 'What we bake today', ...content(lines) }),
  )
const look = async (caller: Caller, key: { formulaId: string; versionId: string }) =>
  valueOf(await getVersion.call(caller, key))
/** What the page sends when somebody signs what they see. */
async function signing(caller: Caller, key: { formulaId: string; versionId: string }, effectiveAt: Date | null = null) {
  const { revision, contentHash } = await look(caller, key)
  return {
    versionId: key.versionId,
    seenRevision: revision,
    seenHash: contentHash,
    effectiveAt: effectiveAt?.toISOString() ?? null,
  }
}
const sign = async (caller: Caller, key: { formulaId: string; versionId: string }, effectiveAt: Date | null = null) =>
  signOffVersion.call(caller, await signing(caller, key, effectiveAt))

describe('drafting', () => {
  it('keeps what was written, in order, and works out the batch', async () => {
    const key = await draftBy(bakery.head.caller)
    const seen = await look(bakery.early.caller, key)
    expect(seen.content.stages[0]?.lines.map(({ ingredient, pctFlour }) => [ingredient.name, pctFlour])).toEqual([
      ['Bread flour', 100],
      ['Water', 60],
      ['Salt', 1.8],
    ])
    expect(seen.content.process.mixTimeS).toBe(570)
    expect(seen.figures?.batch?.doughMassG).toBeCloseTo(8000, 6)
    expect(seen.allergens).toEqual({ known: ['gluten'], uncheckedIngredients: [] })
    expect(seen).toMatchObject({
      state: 'draft',
      number: 1,
      draftedBy: 'Henk',
      mayChange: false,
      signing: { bar: 'no-right', missing: ['second-person'] },
    })
  })

  it('says every fault at once, and by how much the flour is off', async () => {
    const lines = [
      { ingredientId: ids.breadFlour, pctFlour: 98.5 },
      { ingredientId: neighbourIds.water, pctFlour: 60 },
    ]
    const refused = await draftFormula.call(bakery.head.caller, { name: 'Off', reason: 'x', ...content(lines) })
    expect(refusalOf(refused)).toBe('invalid stages.0.lines.1.ingredientId:wrong-choice flour:flour-short')
    expect(refused).toMatchObject({
      refusal: { problems: [{}, { facts: { sum: '98.50\u00a0%', off: '1.50\u00a0%' } }] },
    })
    const over = await draftFormula.call(bakery.head.caller, {
      name: 'Off',
      reason: 'x',
      ...content([...plain(), { ingredientId: ids.ryeFlour, pctFlour: 0.02 }]),
    })
    expect(refusalOf(over)).toBe('invalid flour:flour-over')
    expect(
      refusalOf(
        await draftFormula.call(bakery.head.caller, {
          name: '',
          reason: ' ',
          ...content([]),
          pieces: 1.5,
          doughTempC: 'warm',
        }),
      ),
    ).toBe('invalid name:missing reason:missing pieces:not-whole doughTempC:not-a-number stages.0.lines:too-few')
    const twoDoughs = {
      ...content(plain()),
      stages: [...content(plain()).stages, { kind: 'final_dough', name: '', lines: plain() }],
    }
    expect(refusalOf(await draftFormula.call(bakery.head.caller, { name: 'Two', reason: 'x', ...twoDoughs }))).toBe(
      'invalid stages:one-final-dough',
    )
    expect(await db().formula.count({ where: { bakeryId: bakery.bakeryId, name: { in: ['Off', 'Two'] } } })).toBe(0)
  })

  it('takes a name once, and refuses an ingredient that is no longer in use', async () => {
    const named = { name: 'Only one', reason: 'x', ...content(plain()) }
    valueOf(await draftFormula.call(bakery.head.caller, named))
    expect(refusalOf(await draftFormula.call(bakery.owner.caller, named))).toBe('invalid name:formula-name-taken')
    valueOf(await draftFormula.call(neighbour.head.caller, { ...named, ...content(plain(neighbourIds)) }))
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: ids.honey } },
      data: { endedAt: testNow },
    })
    const refused = await draftFormula.call(bakery.head.caller, {
      ...named,
      name: 'Sweet',
      ...content([...plain(), { ingredientId: ids.honey, pctFlour: 2 }]),
    })
    expect(refusalOf(refused)).toBe('invalid stages.0.lines.3.ingredientId:ingredient-ended')
  })

  it('is for owner and head baker', async () => {
    const key = await draftBy(bakery.head.caller)
    expect(refusalOf(await draftFormula.call(bakery.early.caller, {}))).toBe('not-allowed')
    expect(refusalOf(await draftVersion.call(bakery.early.caller, { fromVersionId: key.versionId, reason: 'x' }))).toBe(
      'not-allowed',
    )
    expect(refusalOf(await changeDraft.call(bakery.early.caller, {}))).toBe('not-allowed')
    expect(refusalOf(await signOffVersion.call(bakery.early.caller, {}))).toBe('not-allowed')
    expect(refusalOf(await getEditor.call(bakery.early.caller, { draft: null }))).toBe('not-allowed')
    expect((await listFormulas.call(bakery.early.caller, {})).ok).toBe(true)
  })

  it('numbers versions one after another, also when two are drafted at once', async () => {
    const key = await draftBy(bakery.head.caller)
    const drafts = await Promise.all(
      [1, 2, 3, 4].map(() => draftVersion.call(bakery.head.caller, { fromVersionId: key.versionId, reason: 'again' })),
    )
    drafts.map(valueOf)
    const { versions } = valueOf(await getFormula.call(bakery.early.caller, { formulaId: key.formulaId }))
    expect(versions.map(({ number, fromNumber }) => [number, fromNumber])).toEqual([
      [5, 1],
      [4, 1],
      [3, 1],
      [2, 1],
      [1, null],
    ])
  })

  it('changes a draft whole, names who was there first, and makes whoever changed it its drafter', async () => {
    const key = await draftBy(bakery.head.caller)
    const change = { versionId: key.versionId, seenRevision: 1, reason: 'Softer', ...content(withMilk()) }
    valueOf(await changeDraft.call(bakery.owner.caller, change))
    expect(await changeDraft.call(bakery.head.caller, change)).toMatchObject({
      ok: false,
      refusal: { code: 'stale', facts: { who: 'Olga' } },
    })
    const seen = await look(bakery.owner.caller, key)
    expect(seen.content.stages[0]?.lines).toHaveLength(4)
    expect(seen).toMatchObject({ draftedBy: 'Olga', revision: 2, signing: { bar: 'own-proposal' } })
    expect(refusalOf(await sign(bakery.owner.caller, key))).toBe('own-proposal')
    const short = await changeDraft.call(bakery.head.caller, {
      ...change,
      seenRevision: 2,
      ...content([{ ingredientId: ids.breadFlour, pctFlour: 99 }]),
    })
    expect(refusalOf(short)).toBe('invalid flour:flour-short')
    expect((await look(bakery.owner.caller, key)).revision).toBe(2)
  })
})

describe('signing off', () => {
  it('freezes the very content that was seen, with words, hash and time', async () => {
    const key = await draftBy(bakery.head.caller)
    const before = await look(bakery.owner.caller, key)
    valueOf(await sign(atMinute(bakery.owner.caller, 5), key))
    const row = await db().formulaVersion.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: key.versionId } },
    })
    expect(row).toMatchObject({ contentHash: before.contentHash, signedAt: minutes(5), effectiveAt: minutes(5) })
    expect(JSON.parse(row.contentText ?? '')).toEqual({ format: 1, ...before.content })
    await db().ingredient.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: ids.salt } },
      data: { name: 'Sea salt' },
    })
    const after = await look(atMinute(bakery.owner.caller, 6), key)
    expect(after).toMatchObject({ state: 'in-production', isWhole: true, content: before.content, signing: null })
    expect(after.signatures).toMatchObject([
      {
        personName: 'Olga',
        role: 'owner',
        byProposer: false,
        meaning: 'I did not draft this version. I have read it whole and sign it off for production.',
      },
    ])
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {})).fault).toBeNull()
  })

  it('lets nothing of a signed version be changed, by the app’s role or the owner’s', async () => {
    const key = await draftBy(bakery.head.caller)
    const draft = await draftBy(bakery.head.caller)
    valueOf(await sign(bakery.owner.caller, key))
    const stage = await db().formulaStage.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, versionId: key.versionId },
    })
    const statements = [
      `UPDATE formula_line SET pct_flour = 61 WHERE version_id = '${key.versionId}'`,
      `DELETE FROM formula_line WHERE version_id = '${key.versionId}'`,
      `INSERT INTO formula_line (bakery_id, id, version_id, stage_id, position, ingredient_id, pct_flour)
       VALUES ('${bakery.bakeryId}', '${randomUUID()}', '${key.versionId}', '${stage.id}', 99, '${ids.butter}', 1)`,
      `UPDATE formula_line SET version_id = '${key.versionId}', stage_id = '${stage.id}', position = position + 100 WHERE version_id = '${draft.versionId}'`,
      `UPDATE formula_stage SET name = 'x' WHERE version_id = '${key.versionId}'`,
      `DELETE FROM formula_stage WHERE version_id = '${key.versionId}'`,
      `INSERT INTO formula_stage (bakery_id, id, version_id, position, kind, name) VALUES ('${bakery.bakeryId}', '${randomUUID()}', '${key.versionId}', 9, 'scald', '')`,
      `UPDATE formula_version SET scaling_mass_g = 1 WHERE id = '${key.versionId}'`,
      `UPDATE formula_version SET effective_at = now() WHERE id = '${key.versionId}'`,
      `UPDATE formula_version SET signed_at = NULL, effective_at = NULL WHERE id = '${key.versionId}'`,
      `DELETE FROM formula_version WHERE id = '${key.versionId}'`,
    ]
    for (const url of [database.appUrl, database.ownerUrl]) {
      await connected(url, async (client) => {
        for (const statement of statements)
          await expect(client.query(statement), statement).rejects.toMatchObject({ code: 'EV002' })
        await expect(client.query(`UPDATE signature SET meaning = 'x'`)).rejects.toMatchObject({
          code: url === database.appUrl ? '42501' : 'EV001',
        })
      })
    }
    expect(
      refusalOf(
        await changeDraft.call(bakery.head.caller, {
          versionId: key.versionId,
          seenRevision: 2,
          reason: 'x',
          ...content(plain()),
        }),
      ),
    ).toBe('signed')
    expect(refusalOf(await getEditor.call(bakery.head.caller, { draft: key }))).toBe('signed')
  })

  it('makes a line that is written while the version is being signed wait, and then refuses it', async () => {
    const key = await draftBy(bakery.head.caller)
    const hash = (await look(bakery.owner.caller, key)).contentHash
    const stage = await db().formulaStage.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, versionId: key.versionId },
    })
    await connected(database.appUrl, (signer) =>
      connected(database.appUrl, async (writer) => {
        await signer.query('BEGIN')
        await signer.query(
          `UPDATE formula_version SET content_text = '{}', content_hash = '${hash}', signed_at = now(), effective_at = now() WHERE id = '${key.versionId}'`,
        )
        const late = writer.query(
          `INSERT INTO formula_line (bakery_id, id, version_id, stage_id, position, ingredient_id, pct_flour)
           VALUES ('${bakery.bakeryId}', '${randomUUID()}', '${key.versionId}', '${stage.id}', 99, '${ids.butter}', 1)`,
        )
        const refused = expect(late).rejects.toMatchObject({ code: 'EV002' })
        await untilSomebodyWaits(database)
        await signer.query('COMMIT')
        await refused
      }),
    )
  })

  it('is refused for the own proposal, a wrong password, a stale look, and what is signed', async () => {
    const key = await draftBy(bakery.head.caller)
    expect(refusalOf(await sign(bakery.head.caller, key))).toBe('own-proposal')
    const seen = await signing(bakery.owner.caller, key)
    expect(refusalOf(await signOffVersion.call(callerOf(bakery.owner.sessionSecret, testNow, 'not it'), seen))).toBe(
      'wrong-password password:not-your-password',
    )
    expect(refusalOf(await signOffVersion.call(callerOf(bakery.owner.sessionSecret, testNow), seen))).toBe(
      'wrong-password password:not-your-password',
    )
    expect(refusalOf(await signOffVersion.call(bakery.owner.caller, { ...seen, seenHash: 'a'.repeat(64) }))).toBe(
      'content-moved-on',
    )
    expect(refusalOf(await signOffVersion.call(bakery.owner.caller, { ...seen, effectiveAt: 'tomorrow' }))).toBe(
      'invalid effectiveAt:not-a-moment',
    )
    expect(
      refusalOf(await signOffVersion.call(bakery.owner.caller, { ...seen, effectiveAt: minutes(-1).toISOString() })),
    ).toBe('invalid effectiveAt:not-in-future')
    valueOf(
      await changeDraft.call(bakery.head.caller, {
        versionId: key.versionId,
        seenRevision: 1,
        reason: 'Other',
        ...content(withMilk()),
      }),
    )
    expect(refusalOf(await signOffVersion.call(bakery.owner.caller, seen))).toBe('stale')
    expect(await db().signature.count({ where: { bakeryId: bakery.bakeryId, versionId: key.versionId } })).toBe(0)
    valueOf(await sign(bakery.owner.caller, key))
    expect(refusalOf(await signOffVersion.call(bakery.owner.caller, seen))).toBe('signed')
  })

  it('is refused when an ingredient’s allergens were changed after the page was opened', async () => {
    const key = await draftBy(bakery.head.caller, [...plain(), { ingredientId: ids.sunflowerOil, pctFlour: 1 }])
    const seen = await signing(bakery.owner.caller, key)
    const where = { bakeryId_id: { bakeryId: bakery.bakeryId, id: ids.sunflowerOil } }
    await db().ingredient.update({ where, data: { allergensCheckedAt: null } })
    expect(refusalOf(await signOffVersion.call(bakery.owner.caller, seen))).toBe('content-moved-on')
    expect((await look(bakery.owner.caller, key)).allergens.uncheckedIngredients.map(({ name }) => name)).toEqual([
      'Sunflower oil',
    ])
    await db().ingredient.update({ where, data: { allergensCheckedAt: testNow } })
  })

  it('counts once when two sign at the same moment', async () => {
    const second = await makeBakery('Two Owners')
    const theirs = await makeIngredients(second.bakeryId)
    await db().person.update({
      where: { bakeryId_id: { bakeryId: second.bakeryId, id: second.early.personId } },
      data: { role: 'owner' },
    })
    const key = valueOf(
      await draftFormula.call(second.head.caller, { name: 'Tin', reason: 'x', ...content(plain(theirs)) }),
    )
    const seen = await signing(second.owner.caller, key)
    const results = await Promise.all(
      [second.owner.caller, second.early.caller].map((caller) => signOffVersion.call(caller, seen)),
    )
    expect(results.filter(({ ok }) => ok)).toHaveLength(1)
    expect(results.filter(({ ok }) => !ok).map(refusalOf)).toEqual(['signed'])
    expect(await db().signature.count({ where: { bakeryId: second.bakeryId } })).toBe(1)
  })

  it('never mixes a change and a signature that come at the same moment', async () => {
    for (let round = 0; round < 5; round++) {
      const key = await draftBy(bakery.head.caller)
      const seen = await signing(bakery.owner.caller, key)
      const change = { versionId: key.versionId, seenRevision: 1, reason: 'Softer', ...content(withMilk()) }
      const [signed, changed] = await Promise.all([
        signOffVersion.call(bakery.owner.caller, seen),
        changeDraft.call(bakery.head.caller, change),
      ])
      expect([signed.ok, changed.ok].filter(Boolean)).toHaveLength(1)
      expect((await look(bakery.owner.caller, key)).content.stages[0]?.lines).toHaveLength(signed.ok ? 3 : 4)
    }
  })

  it('of one’s own proposal is possible where the bakery says so, and the record says it', async () => {
    const alone = await makeBakery('One Pair of Hands')
    const theirs = await makeIngredients(alone.bakeryId)
    valueOf(
      await changeSettings.call(alone.owner.caller, {
        seenRevision: 1,
        bakeryName: 'One Pair of Hands',
        worksAlone: true,
        costChangeLimitPct: 1,
        dayTurnsAtH: 0,
        stationIdleMin: 10,
        pinLastsH: 4,
        language: null,
        timeZone: 'Europe/Berlin',
        locale: 'en-GB',
        currency: 'EUR',
        region: 'eu',
        massUnits: 'metric',
        temperatureUnits: 'celsius',
      }),
    )
    const key = valueOf(
      await draftFormula.call(alone.owner.caller, { name: 'Tin', reason: 'x', ...content(plain(theirs)) }),
    )
    valueOf(await sign(alone.owner.caller, key))
    const { signatures } = await look(alone.owner.caller, key)
    expect(signatures).toMatchObject([{ byProposer: true }])
    expect(signatures[0]?.meaning).toMatch(/^Approved by its proposer:/)
  })

  it('of a change of allergens needs owner and head baker, and holds from the last signature', async () => {
    const key = await draftBy(bakery.head.caller)
    valueOf(await sign(bakery.owner.caller, key))
    const next = valueOf(
      await draftVersion.call(bakery.head.caller, { fromVersionId: key.versionId, reason: 'Softer crumb' }),
    )
    valueOf(
      await changeDraft.call(bakery.head.caller, {
        versionId: next.versionId,
        seenRevision: 1,
        reason: 'Softer crumb',
        ...content(withMilk()),
      }),
    )
    const seen = await look(bakery.head.caller, next)
    // Nothing here has a price, and what is not known may be anything: the words name both.
    expect(seen.signing).toMatchObject({
      needed: ['owner', 'head_baker'],
      grave: 'both',
      change: { added: ['milk'] },
      bar: null,
      isLast: false,
      meaning: 'both-proposer',
    })
    expect(refusalOf(await sign(bakery.head.caller, next, minutes(60)))).toBe('invalid effectiveAt:set-by-last')
    valueOf(await sign(bakery.head.caller, next))
    expect(await look(bakery.owner.caller, next)).toMatchObject({
      state: 'draft',
      mayChange: false,
      signing: { missing: ['owner'], isLast: true },
    })
    expect(
      refusalOf(
        await changeDraft.call(bakery.owner.caller, {
          versionId: next.versionId,
          seenRevision: 3,
          reason: 'x',
          ...content(plain()),
        }),
      ),
    ).toBe('signed')
    expect(refusalOf(await sign(bakery.head.caller, next))).toBe('already-signed')
    valueOf(await sign(bakery.owner.caller, next, minutes(60)))
    const at = async (count: number) =>
      (await versionInProduction(db(), bakery.bakeryId, key.formulaId, minutes(count)))?.number
    expect(await at(59)).toBe(1)
    expect(await at(60)).toBe(2)
    expect(await at(-1)).toBeUndefined()
    expect((await look(bakery.head.caller, next)).state).toBe('coming')
    const other = valueOf(
      await draftVersion.call(bakery.head.caller, { fromVersionId: key.versionId, reason: 'As it was' }),
    )
    expect((await look(bakery.owner.caller, other)).signing?.needed).toEqual(['owner', 'head_baker'])
  })
})

describe('the limit on a change of cost', () => {
  it('is measured from what the owner signed last, so that small steps do not slip through', async () => {
    const house = await makeBakery('Slice by slice')
    const stock = await makeIngredients(house.bakeryId)
    for (const [ingredientId, packPrice] of [
      [stock.breadFlour, '1'],
      [stock.salt, '1'],
      [stock.sugar, '10'],
    ] as const) {
      valueOf(
        await enterPrice.call(house.head.caller, {
          ingredientId,
          holdsFrom: '2026-01-01',
          packMassG: 1000,
          packPrice,
          supplier: 'Invented mill',
        }),
      )
    }
    await db().bakery.update({ where: { bakeryId: house.bakeryId }, data: { costChangeLimitPct: 1 } })
    // (101.8 + 10x) / (161.8 + x): each 0.06 % of sugar makes a loaf 0.55 % dearer.
    const withSugar = (pctFlour: number): Line[] => [...plain(stock), { ingredientId: stock.sugar, pctFlour }]
    const first = valueOf(
      await draftFormula.call(house.head.caller, {
        name: 'Sliced',
        reason: 'What we bake today',
        ...content(plain(stock)),
      }),
    )
    valueOf(await sign(house.owner.caller, first))
    const step = async (fromVersionId: string, sugarPct: number) => {
      const { versionId } = valueOf(
        await draftVersion.call(house.owner.caller, { fromVersionId, reason: 'A little more sugar' }),
      )
      valueOf(
        await changeDraft.call(house.owner.caller, {
          versionId,
          seenRevision: 1,
          reason: 'A little more sugar',
          ...content(withSugar(sugarPct)),
        }),
      )
      return { formulaId: first.formulaId, versionId }
    }
    const second = await step(first.versionId, 0.06)
    expect((await look(house.head.caller, second)).signing).toMatchObject({ needed: ['second-person'], grave: null })
    valueOf(await sign(house.head.caller, second))
    const third = await step(second.versionId, 0.12)
    const seen = (await look(house.head.caller, third)).signing
    expect(seen).toMatchObject({
      needed: ['owner', 'head_baker'],
      grave: 'cost',
      cost: { isBeyondLimit: true, against: { number: 1, isOwners: true } },
    })
    expect(seen?.cost?.differencePct).toBeCloseTo(1.1, 2)
    valueOf(await sign(house.head.caller, third))
    expect((await look(house.head.caller, third)).state).not.toBe('in-production')
    valueOf(await sign(house.owner.caller, third))
    // What the owner signed is where the next step is measured from.
    expect((await look(house.head.caller, await step(third.versionId, 0.18))).signing).toMatchObject({
      needed: ['second-person'],
      grave: null,
    })
  })
})

describe('comparing and looking back', () => {
  it('warns when the stores say something else of the allergens than when it was signed', async () => {
    const key = await draftBy(bakery.head.caller, withMilk())
    valueOf(await sign(bakery.owner.caller, key))
    expect((await look(bakery.early.caller, key)).sinceSigned).toBeNull()
    const where = { bakeryId_id: { bakeryId: bakery.bakeryId, id: ids.milk } }
    await db().ingredient.update({ where, data: { allergens: ['milk', 'soya'] } })
    expect(await look(bakery.early.caller, key)).toMatchObject({
      sinceSigned: { added: ['soya'], gone: [] },
      allergens: { known: ['gluten', 'milk'] },
    })
    await db().ingredient.update({ where, data: { allergens: ['milk'] } })
  })

  it('shows what differs between two versions', async () => {
    const key = await draftBy(bakery.head.caller)
    const next = valueOf(
      await draftVersion.call(bakery.head.caller, { fromVersionId: key.versionId, reason: 'Softer crumb' }),
    )
    valueOf(
      await changeDraft.call(bakery.head.caller, {
        versionId: next.versionId,
        seenRevision: 1,
        reason: 'Softer crumb',
        ...content(withMilk()),
        bakeTempC: 210,
      }),
    )
    const compared = valueOf(
      await compareVersions.call(bakery.early.caller, {
        formulaId: key.formulaId,
        fromId: key.versionId,
        toId: next.versionId,
      }),
    )
    expect(compared.lines.filter(({ isSame }) => !isSame)).toMatchObject([
      { ingredientName: 'Whole milk', fromPct: null, toPct: 5 },
    ])
    expect(compared.measured.filter(({ isSame }) => !isSame)).toEqual([
      { name: 'bakeTempC', from: 220, to: 210, isSame: false },
    ])
    expect(compared.allergens).toMatchObject({ added: ['milk'], gone: [] })
  })

  it('of a neighbour is ‘not found’, as if nothing were there, and so is a version under another formula', async () => {
    const key = await draftBy(bakery.head.caller)
    const other = await draftBy(bakery.head.caller)
    const { revision, contentHash } = await look(bakery.owner.caller, key)
    const seen = { versionId: key.versionId, seenRevision: revision, seenHash: contentHash, effectiveAt: null }
    const pair = { formulaId: key.formulaId, fromId: key.versionId, toId: key.versionId }
    for (const id of [key.versionId, randomUUID()]) {
      expect(
        refusalOf(await getVersion.call(neighbour.owner.caller, { formulaId: key.formulaId, versionId: id })),
      ).toBe('not-found')
      expect(refusalOf(await compareVersions.call(neighbour.owner.caller, { ...pair, toId: id }))).toBe('not-found')
      expect(refusalOf(await draftVersion.call(neighbour.owner.caller, { fromVersionId: id, reason: 'x' }))).toBe(
        'not-found',
      )
      expect(
        refusalOf(
          await changeDraft.call(neighbour.owner.caller, {
            versionId: id,
            seenRevision: 1,
            reason: 'x',
            ...content(plain(neighbourIds)),
          }),
        ),
      ).toBe('not-found')
      expect(refusalOf(await signOffVersion.call(neighbour.owner.caller, { ...seen, versionId: id }))).toBe('not-found')
      expect(
        refusalOf(await getEditor.call(neighbour.owner.caller, { draft: { formulaId: key.formulaId, versionId: id } })),
      ).toBe('not-found')
    }
    expect(refusalOf(await getFormula.call(neighbour.owner.caller, { formulaId: key.formulaId }))).toBe('not-found')
    expect(
      valueOf(await listFormulas.call(neighbour.owner.caller, {})).formulas.rows.map(({ id }) => id),
    ).not.toContain(key.formulaId)
    expect(await versionInProduction(db(), neighbour.bakeryId, key.formulaId, minutes(9999))).toBeNull()
    expect(
      refusalOf(await getVersion.call(bakery.owner.caller, { formulaId: other.formulaId, versionId: key.versionId })),
    ).toBe('not-found')
    expect(refusalOf(await compareVersions.call(bakery.owner.caller, { ...pair, toId: other.versionId }))).toBe(
      'not-found',
    )
  })
})

describe('the invented formulas', () => {
  it('are made by the real commands, months ago, and each is in production', async () => {
    const demo = await makeBakery('Osier Lane')
    const as = (who: 'owner' | 'head' | 'early' | 'late', daysAgo: number) =>
      Promise.resolve({ ...demo[who].caller, now: () => minutes(-daysAgo * 24 * 60) })
    const ids = await makeIngredients(demo.bakeryId)
    // At one price for all a version that swaps a little for as much costs the same, and the owner alone signs it.
    const price = {
      bakeryId: demo.bakeryId,
      holdsFrom: new Date('2024-01-01'),
      packMassG: 1000,
      packPrice: '1',
      currency: 'EUR',
      supplier: 'invented',
      enteredById: demo.owner.personId,
      enteredAt: testNow,
    }
    await db().price.createMany({
      data: Object.values(ids).map((ingredientId) => ({ ...price, id: randomUUID(), ingredientId })),
    })
    const seeded = await seedFormulas(as, ids)
    const { rows: formulas } = valueOf(await listFormulas.call(demo.early.caller, {})).formulas
    expect(formulas.map(({ name, inProduction }) => [name, inProduction?.number])).toEqual([
      ['Lock-keeper’s oat loaf', 1],
      ['Osier white tin', 2],
      ['Towpath wholemeal tin', 1],
    ])
    expect(formulas.every(({ inProduction }) => inProduction?.since && inProduction.since < testNow)).toBe(true)
    for (const key of Object.values(seeded)) {
      const seen = await look(demo.owner.caller, key)
      expect(seen).toMatchObject({ state: 'in-production', isWhole: true, draftedBy: 'Henk' })
      expect(seen.figures?.floursPct).toBeCloseTo(100, 9)
    }
    expect(valueOf(await verifyRecord.call(demo.owner.caller, {})).fault).toBeNull()
  })
})
