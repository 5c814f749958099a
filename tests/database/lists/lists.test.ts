import { v7 as uuid } from 'uuid'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { appendAudit } from '@/lib/db/append-audit'
import { db } from '@/lib/db/client'
import { IngredientKind, type TrialState } from '@/lib/db/generated/enums'
import { inTransaction } from '@/lib/db/transaction'
import { listRecord } from '@/lib/kitchen/audit/list-record'
import { draftChange } from '@/lib/kitchen/decisions/draft-change'
import { keepFormula } from '@/lib/kitchen/decisions/keep-formula'
import { listDecisions } from '@/lib/kitchen/decisions/list-decisions'
import { listFormulas } from '@/lib/kitchen/formulas/list-formulas'
import { writeCursor } from '@/lib/kitchen/page-cursor'
import { getTeam } from '@/lib/kitchen/people/get-team'
import type { Page } from '@/lib/kitchen/read-page'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { listIngredients } from '@/lib/kitchen/stores/list-ingredients'
import { priceOn } from '@/lib/kitchen/stores/price-on'
import { listTrials } from '@/lib/kitchen/trials/list-trials'
import { makeApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'
import { freshDatabase, type FreshDatabase } from '../../support/database'

const many = 120

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
/** With many decisions. */
let house: TestBakery
let owner: pg.Client

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
  owner = new pg.Client({ connectionString: database.ownerUrl })
  await owner.connect()
})
afterAll(async () => {
  await owner.end()
  await database.drop()
})

/** Walks a list to its end by its own cursors. */
async function walk<Row extends { id: string }>(
  pageAfter: (after: string | undefined) => Promise<Page<Row>>,
  betweenPages?: () => Promise<unknown>,
): Promise<string[]> {
  const seen: string[] = []
  let after: string | undefined
  for (let pages = 0; pages < 2 * many; pages++) {
    const page = await pageAfter(after)
    expect(page.isFirst).toBe(after === undefined)
    seen.push(...page.rows.map(({ id }) => id))
    if (page.after === null) return seen
    after = page.after
    await betweenPages?.()
  }
  throw new Error('the list has no end')
}

/** Cursors that somebody might write into the address; whoever brings one is shown the first page. */
const hostile = (list: string): [string, unknown][] => [
  ['garbage', '%%%\u0000'],
  ['10 kB', 'a'.repeat(10_000)],
  ['two at once', ['a', 'b']],
  ['JSON that is no list', Buffer.from('{"a":1}').toString('base64url')],
  ['another bakery’s', writeCursor({ bakeryId: neighbour.bakeryId, list }, [1])],
  ['another list’s', writeCursor({ bakeryId: bakery.bakeryId, list: 'no-such-list' }, [1])],
  ['a key of no shape', writeCursor({ bakeryId: bakery.bakeryId, list }, [])],
  ['a number that the database cannot hold', writeCursor({ bakeryId: bakery.bakeryId, list }, [2 ** 40])],
  ['a text that the database cannot hold', writeCursor({ bakeryId: bakery.bakeryId, list }, ['\u0000', uuid()])],
  ['half a character', writeCursor({ bakeryId: bakery.bakeryId, list }, ['\ud800', uuid()])],
  ['a moment that is none', writeCursor({ bakeryId: bakery.bakeryId, list }, ['2026-02-31T00:00:00Z', uuid()])],
]

/** Copies an approved trial, past the triggers that watch over how one comes about. */
async function copyTrial(trialId: string, count: number, state: TrialState): Promise<void> {
  await owner.query('ALTER TABLE trial DISABLE TRIGGER USER')
  const { rows } = await owner.query<{ column_name: string }>(
    `SELECT column_name FROM information_schema.columns WHERE table_name = 'trial' AND column_name NOT IN ('id', 'number', 'state')`,
  )
  const columns = rows.map(({ column_name }) => pg.escapeIdentifier(column_name)).join(', ')
  await owner.query(
    `INSERT INTO trial (id, number, state, ${columns})
     SELECT gen_random_uuid(), (SELECT max(number) FROM trial WHERE bakery_id = t.bakery_id) + n, $3::trial_state, ${columns} FROM trial t, generate_series(1, $2::int) n WHERE t.id = $1`,
    [trialId, count, state],
  )
  await owner.query('ALTER TABLE trial ENABLE TRIGGER USER')
}

describe('the open trials of the shift', () => {
  let trialId: string
  const shift = async (after?: unknown) => valueOf(await getShift.call(bakery.early.caller, { after }))
  const page = async (after: string | undefined) => (await shift(after)).trials
  const stored = async () =>
    (
      await db().trial.findMany({
        where: { bakeryId: bakery.bakeryId, state: { in: ['approved', 'baking'] } },
        select: { id: true },
        orderBy: { number: 'asc' },
      })
    ).map(({ id }) => id)

  beforeAll(async () => {
    ;({ trialId } = await makeApprovedTrial(bakery))
    await makeApprovedTrial(neighbour)
    await copyTrial(trialId, many - 1, 'approved')
  })

  it('are all there, each once, over its pages, and their number is said', async () => {
    expect(await walk(page)).toEqual(await stored())
    expect(await stored()).toHaveLength(many)
    expect((await page(undefined)).count).toBe(many)
  })

  it('are counted with their doughs over all pages, also on a page that shows none of these', async () => {
    const first = await shift()
    expect(first).toMatchObject({ waiting: 2, underWay: 0 })
    const second = await shift(first.trials.after)
    expect(second).toMatchObject({ waiting: 2, underWay: 0, trials: { isFirst: false } })
    expect(second.trials.rows.flatMap(({ batches }) => batches)).toEqual([])
  })

  it('stay each once while others are approved', async () => {
    const before = await stored()
    const seen = await walk(page, () => copyTrial(trialId, 1, 'approved'))
    expect(seen.slice(0, many)).toEqual(before)
    expect(new Set(seen).size).toBe(seen.length)
  })

  it('begin at the first page with any cursor that is none', async () => {
    const first = await page(undefined)
    for (const [what, after] of hostile('shift')) expect((await shift(after)).trials, what).toEqual(first)
  })
})

describe('the trials by where they stand', () => {
  const lists = async (after?: unknown) => valueOf(await listTrials.call(bakery.late.caller, { after }))

  it('are each once over the pages of their own section; the other sections stay at their first page', async () => {
    const { trialId } = await makeApprovedTrial(bakery, { isUndecided: true })
    await copyTrial(trialId, many, 'closed')
    const past = await db().trial.findMany({
      where: { bakeryId: bakery.bakeryId, state: 'closed' },
      select: { id: true },
      orderBy: { number: 'desc' },
    })
    expect(await walk(async (after) => (await lists(after)).past)).toEqual(past.map(({ id }) => id))
    const first = await lists()
    expect(first).toMatchObject({
      past: { count: many },
      waiting: { count: 1, after: null },
      sentBack: { count: 0 },
      drafts: { count: 0 },
    })
    expect((await lists(first.past.after)).baking).toEqual(first.baking)
  })

  it('stay each once while others end', async () => {
    const before = (
      await db().trial.findMany({ where: { bakeryId: bakery.bakeryId, state: 'closed' }, select: { id: true } })
    ).map(({ id }) => id)
    const end = async () => {
      const { id } = await db().trial.findFirstOrThrow({
        where: { bakeryId: bakery.bakeryId, state: 'closed' },
        select: { id: true },
      })
      await copyTrial(id, 1, 'stopped')
    }
    const seen = await walk(async (after) => (await lists(after)).past, end)
    expect(new Set(seen).size).toBe(seen.length)
    expect(seen.filter((id) => before.includes(id))).toHaveLength(before.length)
  })

  it('begin at the first page with any cursor that is none', async () => {
    const first = await lists()
    for (const [what, after] of hostile('trials.past')) expect(await lists(after), what).toEqual(first)
  })
})

describe('the decisions by where they stand', () => {
  const lists = async (after?: unknown) => valueOf(await listDecisions.call(house.early.caller, { after }))
  /** Decisions on one trial that were taken back, each with evidence of its own, past the triggers that watch over them. */
  const takeBackMany = async (count: number) => {
    for (const table of ['decision', 'evidence']) await owner.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`)
    const ids = Array.from({ length: count }, () => uuid())
    await owner.query(
      `INSERT INTO evidence (bakery_id, id, trial_id, text, hash, frozen_by_id, at)
       SELECT e.bakery_id, n, e.trial_id, e.text, e.hash, e.frozen_by_id, e.at FROM (SELECT * FROM evidence WHERE bakery_id = $1 LIMIT 1) e, unnest($2::uuid[]) n`,
      [house.bakeryId, ids],
    )
    await owner.query(
      `INSERT INTO decision (bakery_id, id, number, trial_id, outcome, evidence_id, reason, decided_by_id, at, taken_back_at, taken_back_by_id, taken_back_why, revision)
       SELECT e.bakery_id, gen_random_uuid(), (SELECT max(number) FROM decision WHERE bakery_id = $1) + row_number() OVER (), e.trial_id, 'keep', e.id, 'Kept.', e.frozen_by_id, e.at, e.at, e.frozen_by_id, 'Slip.', 2
       FROM evidence e WHERE e.bakery_id = $1 AND e.id = ANY($2::uuid[])`,
      [house.bakeryId, ids],
    )
    for (const table of ['decision', 'evidence']) await owner.query(`ALTER TABLE ${table} ENABLE TRIGGER USER`)
  }

  beforeAll(async () => {
    house = await makeBakery('Ferry Road')
    const kept = await makeEndedTrial(house)
    const waiting = await makeEndedTrial(house, { stores: kept.stores })
    const decided = ({ trialId, revision }: EndedTrial) => ({
      trialId,
      seenRevision: revision,
      reason: 'As it showed.',
    })
    valueOf(await keepFormula.call(house.head.caller, decided(kept)))
    valueOf(await draftChange.call(house.head.caller, { ...decided(waiting), armId: waiting.armIds[1] }))
    await takeBackMany(many)
  }, 60_000)

  it('are in the section that their rows say, and none is in no section', async () => {
    const sections = await lists()
    expect([sections.waiting, sections.signed, sections.kept, sections.takenBack].map(({ count }) => count)).toEqual([
      1,
      0,
      1,
      many,
    ])
    expect(sections.waiting.rows.map(({ state }) => state)).toEqual(['waiting'])
    expect(sections.kept.rows.map(({ state }) => state)).toEqual(['kept'])
    expect(sections.takenBack.rows.every(({ state }) => state === 'taken-back')).toBe(true)
  })

  it('are each once over the pages of their section, also while more are taken back', async () => {
    const page = async (after: string | undefined) => (await lists(after)).takenBack
    const before = (
      await db().decision.findMany({
        where: { bakeryId: house.bakeryId, takenBackAt: { not: null } },
        select: { id: true },
        orderBy: { number: 'desc' },
      })
    ).map(({ id }) => id)
    expect(await walk(page)).toEqual(before)
    expect(await walk(page, () => takeBackMany(1))).toEqual(before)
  })

  it('begin at the first page with any cursor that is none', async () => {
    const first = await lists()
    for (const [what, after] of hostile('decisions.taken-back')) expect(await lists(after), what).toEqual(first)
  })
})

describe('the people', () => {
  const team = async (after?: unknown) => valueOf(await getTeam.call(bakery.owner.caller, { after }))
  const joinAtOneMoment = (count: number) =>
    db().person.createMany({
      data: Array.from({ length: count }, () => {
        const id = uuid()
        return {
          bakeryId: bakery.bakeryId,
          id,
          name: 'Twin',
          email: `${id}@mill-row.example`,
          role: 'shift_baker' as const,
          activeAt: testNow,
          revision: 1,
          createdAt: testNow,
          endedAt: testNow,
        }
      }),
    })

  it('who came in at one moment are each once over the pages, also while more come in', async () => {
    await joinAtOneMoment(many)
    const before = (
      await db().person.findMany({
        where: { bakeryId: bakery.bakeryId },
        select: { id: true },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      })
    ).map(({ id }) => id)
    expect(await walk(async (after) => (await team(after)).people)).toEqual(before)
    const seen = await walk(
      async (after) => (await team(after)).people,
      () => joinAtOneMoment(1),
    )
    expect(new Set(seen).size).toBe(seen.length)
    expect(seen.filter((id) => before.includes(id))).toEqual(before)
  })

  it('are counted over all pages, those who work here apart', async () => {
    const { people } = await team()
    expect(await team(people.after)).toMatchObject({
      workingCount: 4,
      people: { count: await db().person.count({ where: { bakeryId: bakery.bakeryId } }) },
    })
  })

  it('begin at the first page with any cursor that is none', async () => {
    const first = await team()
    for (const [what, after] of hostile('people')) expect(await team(after), what).toEqual(first)
  })
})

describe('open invitations', () => {
  it('made at one moment are each once over the pages', async () => {
    await db().invitation.createMany({
      data: Array.from({ length: many }, () => {
        const id = uuid()
        return {
          bakeryId: bakery.bakeryId,
          id,
          purpose: 'join' as const,
          name: 'Twin',
          email: `${id}@mill-row.example`,
          role: 'shift_baker' as const,
          invitedById: bakery.owner.personId,
          createdAt: testNow,
          endsAt: new Date(testNow.getTime() + 3_600_000),
          onMachine: false,
        }
      }),
    })
    const stored = await db().invitation.findMany({
      where: { bakeryId: bakery.bakeryId },
      select: { id: true },
      orderBy: { id: 'asc' },
    })
    const page = async (after: string | undefined) =>
      valueOf(await getTeam.call(bakery.owner.caller, { after })).invitations
    expect(await walk(page)).toEqual(stored.map(({ id }) => id))
    expect((await page(undefined)).count).toBe(many)
  })
})

describe('the formulas', () => {
  const formulas = async (after?: unknown) => valueOf(await listFormulas.call(bakery.early.caller, { after })).formulas
  const names = ['Rye', 'rye', 'Röggeli', 'Élan', 'éclair', '10 seeds', 'Ωmega', 'Zopf', 'zopf']
  const write = (count: number, from = 0) =>
    db().formula.createMany({
      data: Array.from({ length: count }, (_, i) => ({
        bakeryId: bakery.bakeryId,
        id: uuid(),
        name: `${names[(from + i) % names.length]} ${from + i}`,
        createdAt: testNow,
      })),
    })

  it('are each once over the pages, in the order of their names, also while more are written', async () => {
    await write(many)
    const before = (
      await db().formula.findMany({
        where: { bakeryId: bakery.bakeryId },
        select: { id: true },
        orderBy: [{ name: 'asc' }, { id: 'asc' }],
      })
    ).map(({ id }) => id)
    expect(before.length).toBeGreaterThanOrEqual(many)
    expect(await walk(formulas)).toEqual(before)
    let written = many
    const seen = await walk(formulas, () => write(names.length, (written += names.length)))
    expect(new Set(seen).size).toBe(seen.length)
    expect(seen.filter((id) => before.includes(id))).toEqual(before)
  })

  it('begin at the first page with any cursor that is none', async () => {
    const first = await formulas()
    // What is no moment is a name as good as any.
    for (const [what, after] of hostile('formulas').filter(([what]) => !what.includes('moment')))
      expect(await formulas(after), what).toEqual(first)
  })
})

describe('the ingredients', () => {
  const stores = async (after?: unknown) => valueOf(await listIngredients.call(bakery.head.caller, { after }))
  const add = (count: number, endedAt: Date | null = null) =>
    db().ingredient.createMany({
      data: Array.from({ length: count }, (_, i) => {
        const id = uuid()
        return {
          bakeryId: bakery.bakeryId,
          id,
          name: `Grain ${id}`,
          kind: kindAt(i),
          labelName: 'Grain',
          allergens: [],
          dustCaution: false,
          note: '',
          revision: 1,
          createdAt: testNow,
          endedAt,
        }
      }),
    })
  const kindAt = (i: number) => Object.values(IngredientKind)[i % 12] ?? 'other'
  const order = [{ kind: 'asc' }, { name: 'asc' }, { id: 'asc' }] as const

  it.each([
    ['in use', null],
    ['no longer in use', testNow],
  ] as const)(
    '%s are each once over the pages, kind by kind as the database orders them, also while more come in',
    async (_, endedAt) => {
      await add(many, endedAt)
      const where = { bakeryId: bakery.bakeryId, endedAt: endedAt && { not: null } }
      const page = async (after: string | undefined) => (await stores(after))[endedAt ? 'ended' : 'inUse']
      const before = (await db().ingredient.findMany({ where, select: { id: true }, orderBy: [...order] })).map(
        ({ id }) => id,
      )
      expect(await walk(page)).toEqual(before)
      expect((await page(undefined)).count).toBe(before.length)
      const seen = await walk(page, () => add(12, endedAt))
      expect(new Set(seen).size).toBe(seen.length)
      expect(seen.filter((id) => before.includes(id))).toEqual(before)
    },
  )

  it('that lack something are counted over all that are in use, and some of those unchecked are named', async () => {
    const inUse = { bakeryId: bakery.bakeryId, endedAt: null }
    const unchecked = await db().ingredient.count({ where: { ...inUse, allergensCheckedAt: null } })
    const { inUse: page, ...seen } = await stores((await stores()).inUse.after)
    expect(page.isFirst).toBe(false)
    expect(seen.unchecked.count).toBe(unchecked)
    expect(seen.unchecked.names).toHaveLength(12)
    const withFigures = await db().ingredientFigure.groupBy({
      by: ['ingredientId'],
      where: { bakeryId: bakery.bakeryId, ingredient: { endedAt: null } },
    })
    expect(seen.unknownCompositionCount).toBe(page.count - withFigures.length)
    expect(seen.costs?.unpricedCount).toBe(
      page.count - (await priceOn(db(), bakery.bakeryId, await idsInUse(), '2026-03-02')).size,
    )
  })
  const idsInUse = async () =>
    (await db().ingredient.findMany({ where: { bakeryId: bakery.bakeryId, endedAt: null }, select: { id: true } })).map(
      ({ id }) => id,
    )

  it('begin at the first page with any cursor that is none', async () => {
    const first = await stores()
    const cursors = [
      ...hostile('ingredients.in-use'),
      [
        'a kind that is none',
        writeCursor({ bakeryId: bakery.bakeryId, list: 'ingredients.in-use' }, ['concrete', 'x', uuid()]),
      ] as const,
    ]
    for (const [what, after] of cursors) expect(await stores(after), what).toEqual(first)
  })
})

describe('the record', () => {
  const record = async (after?: unknown) => valueOf(await listRecord.call(bakery.owner.caller, { after }))
  const note = () => inTransaction((tx) => appendAudit(tx, bakery.bakeryId, testNow, null, 'test', { action: 'noted' }))
  const page = async (after: string | undefined) => {
    const { entries } = await record(after)
    return { ...entries, rows: entries.rows.map(({ number }) => ({ id: String(number) })) }
  }

  it('shows each entry once over its pages, also while more are made', async () => {
    for (let i = 0; i < many; i++) await note()
    const { number } = await db().auditHead.findUniqueOrThrow({ where: { bakeryId: bakery.bakeryId } })
    expect(Number(number)).toBeGreaterThanOrEqual(many)
    const all = Array.from({ length: Number(number) }, (_, i) => String(Number(number) - i))
    expect(await walk(page)).toEqual(all)
    expect(await walk(page, note)).toEqual(all)
  })

  it('begins at the first page with any cursor that is none', async () => {
    const first = await record()
    // The record counts in 64 bits.
    for (const [what, after] of hostile('record').filter(([what]) => !what.includes('number')))
      expect(await record(after), what).toEqual(first)
  })
})

describe('a cursor of another bakery or another list', () => {
  const in1 = () => bakery.owner.caller
  // What the tests above filled.
  const lists: [string, (after?: string) => Promise<Page<unknown>>][] = [
    ['open trials of the shift', async (after) => valueOf(await getShift.call(in1(), { after })).trials],
    ['past trials', async (after) => valueOf(await listTrials.call(in1(), { after })).past],
    [
      'decisions taken back',
      async (after) => valueOf(await listDecisions.call(house.owner.caller, { after })).takenBack,
    ],
    ['people', async (after) => valueOf(await getTeam.call(in1(), { after })).people],
    ['invitations', async (after) => valueOf(await getTeam.call(in1(), { after })).invitations],
    ['formulas', async (after) => valueOf(await listFormulas.call(in1(), { after })).formulas],
    ['ingredients in use', async (after) => valueOf(await listIngredients.call(in1(), { after })).inUse],
    ['ingredients no longer in use', async (after) => valueOf(await listIngredients.call(in1(), { after })).ended],
    ['record', async (after) => valueOf(await listRecord.call(in1(), { after })).entries],
  ]

  it.each(lists)('with a key that is right for the %s is as good as none', async (_, page) => {
    const first = await page()
    expect(first.after).not.toBeNull()
    const [bakeryId, list, ...key] = JSON.parse(Buffer.from(first.after ?? '', 'base64url').toString()) as [
      string,
      string,
      ...(string | number)[],
    ]
    // The same key of the very list does lead on, so it is whose it is that counts.
    expect(writeCursor({ bakeryId, list }, key)).toBe(first.after)
    expect((await page(first.after ?? '')).isFirst).toBe(false)
    expect(await page(writeCursor({ bakeryId: neighbour.bakeryId, list }, key))).toEqual(first)
    expect(await page(writeCursor({ bakeryId, list: `${list}.other` }, key))).toEqual(first)
  })
})
