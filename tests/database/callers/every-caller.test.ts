import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { db } from '@/lib/db/client'
import { readAuditEntry } from '@/lib/documents/audit-entry/read-audit-entry'
import { mayTry, type Right } from '@/lib/auth/rights'
import type { Caller } from '@/lib/kitchen/caller'
import { command } from '@/lib/kitchen/command'
import { makeBakery, refusalOf, testNow, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { atStation, enrolledStation, givePin, tokenAt, type TestStation } from '../../support/stations'
import { isStillThere } from '../../support/is-still-there'
import { useCasesOnDisk } from '../../support/use-cases'
import { actorOf, levelByHand, parties, whoMay, type PartyName } from '../../support/who-may'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
const tokens = { owner: '', head: '', early: '' }

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
  station = await enrolledStation(bakery)
  for (const who of ['owner', 'head', 'early'] as const) {
    await givePin(bakery[who])
    tokens[who] = await tokenAt(station, bakery[who])
  }
})
afterAll(() => database.drop())

const useCases = await useCasesOnDisk()
const guarded = useCases.filter((useCase) => useCase.kind === 'command' || useCase.kind === 'query')
const from = { address: 'test', device: 'test', now: () => testNow }

/** Callers who can be looked up today, each as a route or the machine would have them. */
const callers: Record<string, { party: PartyName | null; caller: () => Caller }> = {
  'a stranger': { party: null, caller: () => ({ ...from, kind: 'desk', sessionSecret: null }) },
  'somebody with a made-up session': {
    party: null,
    caller: () => ({ ...from, kind: 'desk', sessionSecret: 'made-up' }),
  },
  'the owner': { party: 'desk owner', caller: () => bakery.owner.caller },
  'the head baker': { party: 'desk head_baker', caller: () => bakery.head.caller },
  'a shift baker': { party: 'desk shift_baker', caller: () => bakery.early.caller },
  'the job for an owner’s link': {
    party: 'job owner-link',
    caller: () => ({ ...from, kind: 'job', job: 'owner-link', bakeryId: bakery.bakeryId }),
  },
  'the job that checks records': {
    party: 'job check-records',
    caller: () => ({ ...from, kind: 'job', job: 'check-records', bakeryId: bakery.bakeryId }),
  },
  'a job in a bakery that is not there': {
    party: null,
    caller: () => ({ ...from, kind: 'job', job: 'owner-link', bakeryId: '00000000-0000-7000-8000-000000000000' }),
  },
  'a job that is not known': {
    party: null,
    caller: () => ({ ...from, kind: 'job', job: 'everything' as 'owner-link', bakeryId: bakery.bakeryId }),
  },
  'an enrolled tablet with nobody on it': { party: 'station alone', caller: () => atStation(station, null) },
  'a shift baker at a tablet': { party: 'station shift_baker', caller: () => atStation(station, tokens.early) },
  'the head baker at a tablet': { party: 'station head_baker', caller: () => atStation(station, tokens.head) },
  'the owner at a tablet': { party: 'station owner', caller: () => atStation(station, tokens.owner) },
  'a tablet with the owner’s session in place of its secret': {
    party: null,
    caller: () => ({
      ...from,
      kind: 'station',
      stationSecret: bakery.owner.sessionSecret,
      shiftToken: bakery.owner.sessionSecret,
    }),
  },
  'a taster': {
    party: null,
    caller: () => ({ ...from, kind: 'taster', panelSecret: bakery.owner.sessionSecret, code: '417' }),
  },
  'a kind that is not known, with the owner’s session': {
    party: null,
    caller: () => ({ ...bakery.owner.caller, kind: 'office' }) as never,
  },
  'a kind that every object has, with the owner’s session': {
    party: null,
    caller: () => ({ ...bakery.owner.caller, kind: 'constructor' }) as never,
  },
}

/** No command and no query takes nothing at all, so whoever gets past the door is stopped behind it. */
const noInput = null

it('there are commands and queries to walk, each with a right of the table', () => {
  expect(guarded.length).toBeGreaterThan(60)
  expect(guarded.filter(({ right }) => !(right in whoMay)).map(({ name }) => name)).toEqual([])
})

describe.each(Object.entries(callers))('%s', (_, { party, caller }) => {
  it.each(guarded)('calls $name', async (useCase) => {
    const code = refusalOf(await useCase.call(caller(), noInput))
    if (party === null) expect(['not-signed-in', 'not-allowed']).toContain(code)
    else expect(code.split(' ')[0]).toBe(levelByHand(party, useCase.right) === 'no' ? 'not-allowed' : 'invalid')
  })
})

describe.each(parties)('by the table, as %s', (party) => {
  it.each(guarded)('$name', ({ right }) => {
    expect(mayTry(actorOf(party), right)).toBe(levelByHand(party, right) !== 'no')
  })
})

describe('what cannot be looked up yet', () => {
  it('holds no lock’s place either: a made-up station and a taster are nobody by the time the record is locked', async () => {
    for (const party of parties.filter((name) => /station|taster/.test(name)))
      expect(await isStillThere(actorOf(party, bakery.bakeryId), testNow)).toBe(false)
    expect(await isStillThere({ ...actorOf('desk owner'), kind: 'office' } as never, testNow)).toBe(false)
  })
})

describe('a job', () => {
  const touch = command({
    name: 'test.touch',
    input: z.strictObject({}),
    right: 'make-owner-link',
    run: async ({ actor, language }) => ({ value: language, audit: { target: actor.bakeryId } }),
  })
  const job = (bakeryId = bakery.bakeryId): Caller => ({ ...from, kind: 'job', job: 'owner-link', bakeryId })

  it('works as itself: its entry has no person and says which job, and a no to it is in the record alike', async () => {
    expect(await touch.call(job(), {})).toMatchObject({ ok: true, value: 'en' })
    const refused = command({
      name: 'test.refused',
      input: z.strictObject({}),
      right: 'change-settings',
      run: async () => ({ value: null, audit: {} }),
    })
    expect(refusalOf(await refused.call(job(), {}))).toBe('not-allowed')
    const entries = await db().auditEntry.findMany({
      where: { bakeryId: bakery.bakeryId, action: { in: ['test.touch', 'refused.right'] } },
      orderBy: { number: 'desc' },
      take: 2,
    })
    for (const { by, personId, entryText } of entries) {
      expect({ by, personId }).toEqual({ by: 'job', personId: null })
      expect(readAuditEntry(entryText)).toMatchObject({ format: 2, entry: { who: { kind: 'job', job: 'owner-link' } } })
    }
    expect(entries.map(({ action }) => action)).toEqual(['refused.right', 'test.touch'])
  })

  it('has no password to sign with', async () => {
    const signs = command({
      name: 'test.signs',
      input: z.strictObject({}),
      right: 'make-owner-link',
      askPassword: true,
      run: async () => ({ value: null, audit: {} }),
    })
    expect(refusalOf(await signs.call(job(), {}))).toBe('not-allowed')
    expect(await db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action: 'test.signs' } })).toBe(0)
  })
})

describe('the database', () => {
  const insert = (by: string | null, personId: string | null) => db().$executeRaw`
    INSERT INTO audit_entry (bakery_id, number, at, by, person_id, action, entry_text, previous_hash, hash)
    VALUES (${bakery.bakeryId}::uuid, 1000000, ${testNow}, ${by}::caller_kind, ${personId}::uuid, 'test', '{}', ${'0'.repeat(64)}, ${'0'.repeat(64)})`

  it.each([
    ['desk', false],
    ['job', true],
    ['taster', true],
    [null, true],
  ])('refuses an entry of %s that has a person: %s', async (by, hasPerson) => {
    await expect(insert(by, hasPerson ? bakery.owner.personId : null)).rejects.toThrow('audit_entry_by_whom')
  })
})

it('every right of the table is asked by something, or is of what is not built yet', () => {
  const asked = new Set<string>(guarded.map(({ right }) => right))
  const behindTheDoor: Right[] = ['follow-book', 'see-costs', 'taste']
  expect(
    Object.keys(whoMay)
      .filter((right) => !asked.has(right))
      .sort(),
  ).toEqual(behindTheDoor)
})
