import { createHash } from 'node:crypto'
import fs from 'node:fs'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest'
import { db } from '../../../lib/db/client'
import { readClosing } from '../../../lib/documents/closing/read-closing'
import { keepFormula } from '../../../lib/kitchen/decisions/keep-formula'
import { closeTrial } from '../../../lib/kitchen/results/close-trial'
import { getResult } from '../../../lib/kitchen/amendments/get-result'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { plantTrial, type PlantedTrial } from '../../support/planted-trial'

/*
 * What was closed of a trial and the book itself, changed as somebody can who has the database's own password: each must
 * be refused, or be named on the page at the thing itself.
 */
let database: FreshDatabase
let bakery: TestBakery
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())

const doughs = [1, 2, 3].flatMap((day) =>
  [0, 1].map((arm) => ({
    arm,
    day,
    loaves: [1, 2, 3, 4].map((loaf) => {
      const volume = 1600 + 160 * arm + 20 * day + 3 * loaf + 5 * ((day + arm) % 3)
      return { massG: 400, volumesMl: [volume, volume + 2] as [number, number] }
    }),
  })),
)
const plant = (state: 'closed' | 'baking' = 'closed') =>
  plantTrial(bakery, { state, mixingDays: 3, doughs, at: testNow })
const look = async ({ trialId }: PlantedTrial) => valueOf(await getResult.call(bakery.early.caller, { trialId }))

/** Runs statements with every guard of a table away, as the database's owner can. */
const tamper = (table: string, statements: string) =>
  connected(database.ownerUrl, (owner) =>
    owner.query(`ALTER TABLE ${table} DISABLE TRIGGER USER; ${statements}; ALTER TABLE ${table} ENABLE TRIGGER USER`),
  )
const aReading = ({ batchIds, measureIds }: PlantedTrial, code = 'loaf-mass', piece = 2) =>
  db().reading.findFirstOrThrow({
    where: { batchId: batchIds.get('2-1')!, measureId: measureIds.get(code)!, piece },
    orderBy: { repeat: 'asc' },
  })

it('a trial of which nothing was weighed has the seal that it had before weighings were written down', async () => {
  const { trialId } = await plant()
  const migration = fs.readFileSync('prisma/migrations/20261201010000_closed_readings/migration.sql', 'utf8')
  const [former = ''] = /CREATE FUNCTION "seal_of_rows"[^]*?\$\$;/.exec(migration) ?? []
  const seals = await connected(database.ownerUrl, async (owner) => {
    await owner.query(former.replace('"seal_of_rows"', '"former_seal"'))
    return owner.query<{ now: string; then: string }>(
      'SELECT seal_of_rows($1, $2) AS now, former_seal($1, $2) AS then',
      [bakery.bakeryId, trialId],
    )
  })
  expect(seals.rows[0]!.now).toMatch(/^[0-9a-f]{64}$/)
  expect(seals.rows[0]!.now).toBe(seals.rows[0]!.then)
})

describe('closing the readings', () => {
  it('keeps every value in one text, whose hash is that of its words', async () => {
    const planted = await plant()
    const { text, hash } = await db().closing.findFirstOrThrow({ where: { trialId: planted.trialId } })
    expect(createHash('sha256').update(text, 'utf8').digest('hex')).toBe(hash)
    const read = readClosing(text, hash)
    if (read.outcome !== 'read') throw new Error(read.outcome)
    expect(read.closing.readings).toHaveLength(await db().reading.count({ where: { trialId: planted.trialId } }))
    expect(read.closing.doughs.map(({ arm, day, state }) => [arm, day, state])).toEqual(
      doughs.map(({ arm, day }) => [arm, day, 'measured']),
    )
    expect(read.closing.declared).toMatchObject({ kind: 'gain', margin: 4, marginUnit: 'pct', confidencePct: 95 })
    expect((await look(planted)).sealed).toEqual({ outcome: 'agrees', hash })
  })

  it('stands whatever becomes of the measures it was read by', async () => {
    const planted = await plant()
    const before = await look(planted)
    await db().measure.updateMany({
      where: { bakeryId: bakery.bakeryId, code: 'loaf-volume' },
      data: { repeats: 1, repeatLimit: 0.1 },
    })
    const after = await look(planted)
    await db().measure.updateMany({
      where: { bakeryId: bakery.bakeryId, code: 'loaf-volume' },
      data: { repeats: 2, repeatLimit: null },
    })
    expect(after).toEqual(before)
  })

  it('refuses a trial in which a dough is not the one that was drawn for its code, and closes nothing', async () => {
    const planted = await plant('baking')
    const [one, other] = [planted.batchIds.get('1-0')!, planted.batchIds.get('1-1')!]
    await tamper('batch', swapArms(one, other))
    const asked = { trialId: planted.trialId, seenRevision: 1, early: false, reason: 'Nothing else was read.' }
    expect(refusalOf(await closeTrial.call(bakery.head.caller, asked))).toBe('not-as-planned')
    expect(await db().closing.count({ where: { trialId: planted.trialId } })).toBe(0)
    await tamper('batch', swapArms(one, other))
    expect(valueOf(await closeTrial.call(bakery.head.caller, asked))).toEqual({ state: 'closed' })
  })
})

function swapArms(one: string, other: string): string {
  return `UPDATE batch b SET arm_id = (SELECT o.arm_id FROM batch o WHERE o.id IN ('${one}', '${other}') AND o.id <> b.id) WHERE b.id IN ('${one}', '${other}')`
}

describe('a closed trial', () => {
  test('takes no reading, changes no dough, and keeps what was closed, by the app’s own role', async () => {
    const planted = await plant()
    const { id: _, ...reading } = await aReading(planted)
    await expect(db().reading.create({ data: { ...reading, id: uuid(), repeat: 9 } })).rejects.toThrow('EV007')
    const key = { bakeryId_id: { bakeryId: bakery.bakeryId, id: planted.batchIds.get('2-1')! } }
    await expect(db().batch.update({ where: key, data: { state: 'baked' } })).rejects.toThrow('EV005')
    const closing = { bakeryId_trialId: { bakeryId: bakery.bakeryId, trialId: planted.trialId } }
    await expect(db().closing.update({ where: closing, data: { hash: 'x' } })).rejects.toThrow()
    await expect(db().closing.delete({ where: closing })).rejects.toThrow()
    expect((await look(planted)).sealed.outcome).toBe('agrees')
  })

  const tampered: {
    what: string
    change: (planted: PlantedTrial) => Promise<unknown>
    sealed: object
  }[] = [
    {
      what: 'a loaf’s weight',
      change: async (planted) =>
        tamper('reading', `UPDATE reading SET value = 390 WHERE id = '${(await aReading(planted)).id}'`),
      sealed: {
        outcome: 'differs',
        first: { kind: 'reading-changed', was: '400\u00a0g (400)', is: '400\u00a0g (390)' },
      },
    },
    {
      what: 'who read it',
      change: async (planted) =>
        tamper(
          'reading',
          `UPDATE reading SET person_id = '${bakery.late.personId}' WHERE id = '${(await aReading(planted)).id}'`,
        ),
      sealed: { outcome: 'differs', first: { kind: 'reading-changed' } },
    },
    {
      what: 'a reading, taken out',
      change: async (planted) => {
        const { id } = await aReading(planted, 'loaf-volume')
        await connected(database.ownerUrl, (owner) =>
          owner.query(
            `ALTER TABLE reading DISABLE TRIGGER USER; ALTER TABLE reading_place DISABLE TRIGGER USER;
             DELETE FROM reading_place WHERE reading_id = '${id}'; DELETE FROM reading WHERE id = '${id}';
             ALTER TABLE reading ENABLE TRIGGER USER; ALTER TABLE reading_place ENABLE TRIGGER USER`,
          ),
        )
      },
      sealed: { outcome: 'differs', first: { kind: 'reading-gone', is: null } },
    },
    {
      what: 'a reading, put in',
      change: async (planted) => {
        const { id } = await aReading(planted)
        await tamper(
          'reading',
          `INSERT INTO reading SELECT bakery_id, '${uuid()}', trial_id, batch_id, piece, factor_level, measure_id, 7, value, value_entered, unit_entered, person_id, taken_at, received_at, supersedes_id, reason, content_hash, plausible_least, plausible_most FROM reading WHERE id = '${id}'`,
        )
      },
      sealed: { outcome: 'differs', first: { kind: 'reading-added', was: null } },
    },
    {
      what: 'the arms of two doughs',
      change: ({ batchIds }) => tamper('batch', swapArms(batchIds.get('1-0')!, batchIds.get('1-1')!)),
      sealed: { outcome: 'differs', first: { kind: 'dough', field: 'arm' } },
    },
    {
      what: 'what became of a dough',
      change: ({ batchIds }) =>
        tamper('batch', `UPDATE batch SET state = 'lost', state_why = 'x' WHERE id = '${batchIds.get('3-0')!}'`),
      sealed: { outcome: 'differs', first: { kind: 'dough', field: 'state' } },
    },
    {
      what: 'how many loaves were good',
      change: ({ batchIds }) =>
        tamper('batch', `UPDATE batch SET pieces_good = 1 WHERE id = '${batchIds.get('3-0')!}'`),
      sealed: { outcome: 'differs', first: { kind: 'dough', field: 'piecesGood' } },
    },
    {
      what: 'the text of what was closed',
      change: ({ trialId }) =>
        tamper(
          'closing',
          `UPDATE closing SET text = replace(text, '"valueEntered":"400"', '"valueEntered":"401"') WHERE trial_id = '${trialId}'`,
        ),
      sealed: { outcome: 'damaged' },
    },
    {
      what: 'the hash beside the text',
      change: ({ trialId }) =>
        tamper('closing', `UPDATE closing SET hash = repeat('a', 64) WHERE trial_id = '${trialId}'`),
      sealed: { outcome: 'damaged' },
    },
    {
      what: 'the seal of the rows',
      change: ({ trialId }) => tamper('closing', `UPDATE closing SET rows_seal = 'x' WHERE trial_id = '${trialId}'`),
      sealed: { outcome: 'differs', first: null },
    },
  ]

  it.each(tampered)('says so when somebody changes $what, concludes nothing, and lets nobody decide', async (q) => {
    const planted = await plant()
    const before = await look(planted)
    expect(before.analysis.comparison).not.toBeNull()
    await q.change(planted)
    const after = await look(planted)
    expect(after.sealed).toMatchObject(q.sealed)
    expect(after.analysis).toMatchObject({ comparison: null, limits: [] })
    expect(after.batches.every(({ arm }) => arm === null)).toBe(true)
    expect(after).toMatchObject({ withTakenOut: null, mixed: [] })
    const { costs } = valueOf(await getResult.call(bakery.owner.caller, { trialId: planted.trialId }))
    expect(costs?.arms.every(({ perLitre, good }) => perLitre === null && good === null)).toBe(true)
    const { revision: seenRevision } = after.trial
    const asked = { trialId: planted.trialId, seenRevision, reason: 'It is not worth it.' }
    expect(refusalOf(await keepFormula.call(bakery.owner.caller, asked))).toBe('seal-broken')
  })

  test.each([
    [
      'changed with its hash and with the rows',
      (trialId: string) =>
        `UPDATE closing SET text = replace(text, '"value":400', '"value":300') WHERE trial_id = '${trialId}';
       UPDATE closing SET hash = encode(sha256(convert_to(text, 'UTF8')), 'hex') WHERE trial_id = '${trialId}'`,
    ],
    ['taken away', (trialId: string) => `DELETE FROM closing WHERE trial_id = '${trialId}'`],
  ])('whose closing was %s is not what the record noted', async (_, statements) => {
    const planted = await plant('baking')
    const asked = { trialId: planted.trialId, seenRevision: 1, early: false, reason: 'Nothing else was read.' }
    valueOf(await closeTrial.call(bakery.head.caller, asked))
    expect((await look(planted)).sealed.outcome).toBe('agrees')
    await tamper('closing', statements(planted.trialId))
    expect(await look(planted)).toMatchObject({ sealed: { outcome: 'damaged' }, analysis: { comparison: null } })
  })

  test('that ended before there were seals says so, and shows its rows', async () => {
    const planted = await plant()
    await tamper('closing', `DELETE FROM closing WHERE trial_id = '${planted.trialId}'`)
    const { sealed, analysis } = await look(planted)
    expect(sealed).toEqual({ outcome: 'unsealed' })
    expect(analysis.comparison).not.toBeNull()
  })
})
