import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it, test } from 'vitest'
import { db } from '@/lib/db/client'
import { decideAmendment } from '@/lib/kitchen/amendments/decide-amendment'
import { proposeAmendment } from '@/lib/kitchen/amendments/propose-amendment'
import { proposeNotCounting } from '@/lib/kitchen/amendments/propose-not-counting'
import { signSlip } from '@/lib/kitchen/amendments/sign-slip'
import type { Caller } from '@/lib/kitchen/caller'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { plantTrial, type PlantedTrial } from '../../support/planted-trial'

/*
 * What comes after the readings of a trial were closed: proposed by one, decided by another, and beside the first result,
 * which never changes.
 */
let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let planted: PlantedTrial
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  planted = await plant()
})

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
const plant = (state: 'closed' | 'baking' = 'closed', of: TestBakery = bakery) =>
  plantTrial(of, { state, mixingDays: 3, doughs, at: testNow })
const doughId = (which = '2-1') => planted.batchIds.get(which)!
const asked = (change: object = {}) => ({
  trialId: planted.trialId,
  what: 'another',
  doughId: doughId(),
  measureId: planted.measureIds.get('loaf-volume')!,
  piece: 2,
  repeat: 1,
  value: '1900',
  reason: 'Two digits were swapped on paper.',
  ...change,
})
const propose = async (change: object = {}, caller: Caller = bakery.early.caller) =>
  valueOf(await proposeAmendment.call(caller, asked(change))).amendmentId
const outOf = (change: object = {}) => ({
  trialId: planted.trialId,
  doughId: doughId(),
  reason: 'No salt: the tub was full.',
  ...change,
})
const hashOf = async (amendmentId: string) =>
  (await db().amendment.findFirstOrThrow({ where: { id: amendmentId } })).hash
const decide = async (amendmentId: string, accept = true, caller: Caller = bakery.head.caller, note = 'Looked.') =>
  decideAmendment.call(caller, { amendmentId, seenHash: await hashOf(amendmentId), accept, note })
const look = async (caller: Caller = bakery.early.caller, { trialId } = planted) =>
  valueOf(await getResult.call(caller, { trialId })).after!
const first = async () => {
  const { after: _, ...result } = valueOf(await getResult.call(bakery.late.caller, { trialId: planted.trialId }))
  return result
}
const closingRow = () => db().closing.findFirstOrThrow({ where: { trialId: planted.trialId } })

describe('a proposal', () => {
  it('keeps what was closed, what should stand, why, who and when, and changes nothing', async () => {
    const [before, closing] = [await first(), await closingRow()]
    const id = await propose()
    const { amendments, second } = await look()
    expect(amendments).toMatchObject([
      {
        id,
        by: 'Esi',
        at: testNow,
        reason: 'Two digits were swapped on paper.',
        isLate: false,
        verdict: null,
        change: {
          kind: 'reading',
          old: { value: 1806, valueEntered: '1806', unitEntered: 'g' },
          new: { value: 1900, valueEntered: '1900', unitEntered: 'mL' },
        },
      },
    ])
    expect(second).toBeNull()
    expect(await first()).toEqual(before)
    expect(await closingRow()).toEqual(closing)
  })

  it.each([
    ['of what stands already', { value: '1806' }, 'invalid value:stands-already'],
    ['out of the measure’s range', { value: '99999' }, 'invalid value:outside-measure'],
    ['that is no number', { value: 'large' }, 'invalid value:not-a-number'],
    ['without a reason', { reason: ' ' }, 'invalid reason:missing'],
    ['of a piece that there is not', { piece: 9 }, 'invalid piece:too-big'],
    ['of no piece at all', { piece: null }, 'invalid piece:missing'],
    ['for what was never closed', { repeat: 3 }, 'no-such-closed-reading'],
    ['that something is missing which is there', { what: 'missing' }, 'reading-closed-there'],
    ['of one repeat more than the plan asks for', { what: 'missing', repeat: 3 }, 'no-further-repeat'],
    ['of a dough of no trial', { doughId: uuid() }, 'not-found'],
    ['of a measure that there is not', { measureId: uuid() }, 'not-found'],
    ['with an old value of its own', { old: 1 }, 'invalid old:unknown-field'],
  ])('is refused %s', async (_, change, expected) => {
    expect(refusalOf(await proposeAmendment.call(bakery.early.caller, asked(change)))).toBe(expected)
    expect(await db().amendment.count({ where: { trialId: planted.trialId } })).toBe(0)
  })

  it('is refused for what is worked out, and for a dough of another trial', async () => {
    const worked = planted.measureIds.get('specific-volume')
    expect(refusalOf(await proposeAmendment.call(bakery.early.caller, asked({ measureId: worked })))).toBe(
      'invalid measureId:measure-worked-out',
    )
    const other = await plant()
    const stranger = other.batchIds.get('1-0')
    expect(refusalOf(await proposeAmendment.call(bakery.early.caller, asked({ doughId: stranger })))).toBe('not-found')
    expect(refusalOf(await proposeNotCounting.call(bakery.early.caller, outOf({ doughId: stranger })))).toBe(
      'not-found',
    )
  })

  it('is refused while readings are open, and of another bakery’s trial', async () => {
    const closed = planted.trialId
    planted = await plant('baking')
    expect(refusalOf(await proposeAmendment.call(bakery.head.caller, asked()))).toBe('readings-not-closed')
    expect(refusalOf(await proposeNotCounting.call(bakery.head.caller, outOf()))).toBe('readings-not-closed')
    expect(valueOf(await getResult.call(bakery.head.caller, { trialId: planted.trialId })).after).toBeNull()
    for (const trialId of [closed, uuid()]) {
      expect(refusalOf(await proposeAmendment.call(neighbour.owner.caller, asked({ trialId })))).toBe('not-found')
      expect(refusalOf(await getResult.call(neighbour.owner.caller, { trialId }))).toBe('not-found')
    }
  })

  it('waits alone at its place, counts once for a form, and may come again once it is decided', async () => {
    const form = { ...bakery.early.caller, formId: uuid() }
    const id = await propose({}, form)
    expect(await propose({}, form)).toBe(id)
    expect(await proposeAmendment.call(bakery.late.caller, asked({ value: '1880' }))).toMatchObject({
      refusal: { code: 'amendment-waits-already', facts: { who: 'Esi' } },
    })
    valueOf(await decide(id, false))
    await propose({ value: '1880' })
    valueOf(await proposeNotCounting.call(bakery.early.caller, outOf()))
    expect(refusalOf(await proposeNotCounting.call(bakery.late.caller, outOf()))).toBe('amendment-waits-already')
  })

  it('by two at one moment is one', async () => {
    const both = await Promise.all(
      [bakery.early, bakery.late].map(({ caller }) => proposeAmendment.call(caller, asked())),
    )
    expect(both.map((each) => (each.ok ? 'ok' : each.refusal.code)).sort()).toEqual(['amendment-waits-already', 'ok'])
  })
})

describe('a second person', () => {
  it('is not who proposed it, no baker while there is a head, and nobody of another bakery', async () => {
    const id = await propose({}, bakery.head.caller)
    expect(refusalOf(await decide(id, true, bakery.head.caller))).toBe('own-amendment')
    expect(refusalOf(await decide(id, true, bakery.early.caller))).toBe('not-allowed')
    expect(refusalOf(await decide(id, true, neighbour.owner.caller))).toBe('not-found')
    expect((await look(bakery.head.caller)).amendments[0]).toMatchObject({ mayDecide: null, isOwn: true })
    expect((await look(bakery.owner.caller)).amendments[0]).toMatchObject({ mayDecide: 'second_person', isOwn: false })
    valueOf(await decide(id, true, bakery.owner.caller))
  })

  it('is not who proposed it by the database either, whatever code writes', async () => {
    const id = await propose()
    const { proposedById } = await db().amendment.findFirstOrThrow({ where: { id } })
    const row = { bakeryId: bakery.bakeryId, amendmentId: id, isAccepted: true, note: '', at: testNow } as const
    const own = { ...row, proposedById, decidedById: proposedById, signsAs: 'second_person' as const }
    await expect(db().amendmentVerdict.create({ data: own })).rejects.toThrow('amendment_verdict_by_a_second')
    const lying = { ...own, proposedById: bakery.late.personId }
    await expect(db().amendmentVerdict.create({ data: lying })).rejects.toThrow()
  })

  it('says it once, also when two say it at one moment; a no says why', async () => {
    const id = await propose()
    expect(refusalOf(await decide(id, false, bakery.head.caller, ''))).toBe('invalid note:say-why')
    expect(
      refusalOf(
        await decideAmendment.call(bakery.head.caller, {
          amendmentId: id,
          seenHash: 'a'.repeat(64),
          accept: true,
          note: '',
        }),
      ),
    ).toBe('stale-moved-on')
    const both = await Promise.all([decide(id, true, bakery.head.caller), decide(id, false, bakery.owner.caller)])
    expect(both.map((each) => (each.ok ? 'ok' : each.refusal.code)).sort()).toEqual(['amendment-decided', 'ok'])
    expect(await db().amendmentVerdict.count({ where: { amendmentId: id } })).toBe(1)
  })

  it('is any baker where the only other is who proposed it, and nobody where nobody else is there', async () => {
    const small = await makeBakery('Two Hands')
    const close = (...who: ('head' | 'early' | 'late')[]) =>
      db().person.updateMany({
        where: { bakeryId: small.bakeryId, id: { in: who.map((each) => small[each].personId) } },
        data: { endedAt: testNow },
      })
    planted = await plantTrial(small, { state: 'closed', mixingDays: 3, doughs, at: testNow })
    await close('head')
    const id = await propose({}, small.owner.caller)
    expect(refusalOf(await decide(id, true, small.owner.caller))).toBe('own-amendment')
    expect((await look(small.early.caller)).amendments[0]?.mayDecide).toBe('witness')
    valueOf(await decide(id, true, small.early.caller))
    expect(await look(small.owner.caller)).toMatchObject({
      nobodyElse: false,
      amendments: [{ verdict: { as: 'witness' } }],
    })
    await close('early', 'late')
    const alone = await propose({ piece: 3 }, small.owner.caller)
    valueOf(await decide(alone, true, small.owner.caller))
    const { nobodyElse, second } = await look(small.owner.caller)
    expect(nobodyElse).toBe(true)
    expect(second).not.toBeNull()
  })
})

describe('what was accepted', () => {
  it('makes a second analysis beside the first, which stays; what was turned down makes none', async () => {
    const before = await first()
    const meanOf = (arms: readonly { arm: number; mean: number | null }[] = []) =>
      arms.find(({ arm }) => arm === 1)?.mean
    valueOf(await decide(await propose({ piece: 1 }), false))
    expect((await look()).second).toBeNull()
    // One reading of 48 by 94 mL up: its loaf by half of that, the mean of the arm's 12 loaves of 400 g by 1/24 of it.
    valueOf(await decide(await propose()))
    const { second } = await look()
    const moved = meanOf(second?.comparison?.arms)! - meanOf(before.analysis.comparison?.arms)!
    expect(moved).toBeCloseTo((1900 - 1806) / 2 / 12 / 400, 10)
    expect(await first()).toEqual(before)
  })

  it('leaves a dough out that should not count', async () => {
    const before = await first()
    const { amendmentId } = valueOf(await proposeNotCounting.call(bakery.early.caller, outOf()))
    valueOf(await decide(amendmentId))
    const { second } = await look()
    expect(second?.comparison?.arms.map(({ batches }) => batches)).toEqual([2, 2])
    expect(before.analysis.comparison?.arms.map(({ batches }) => batches)).toEqual([3, 3])
    expect(await first()).toEqual(before)
    expect(refusalOf(await proposeNotCounting.call(bakery.early.caller, outOf()))).toBe('dough-out-already')
  })

  it('never changes the first result, its text or its hash, whatever is proposed and said', async () => {
    const [before, closing] = [await first(), await closingRow()]
    const steps = fc.record({
      dough: fc.constantFrom('1-0', '1-1', '2-0', '2-1', '3-1'),
      piece: fc.integer({ min: 1, max: 4 }),
      value: fc.integer({ min: 1200, max: 2400 }),
      accept: fc.boolean(),
      isOut: fc.boolean(),
    })
    await fc.assert(
      fc.asyncProperty(fc.array(steps, { minLength: 1, maxLength: 4 }), async (drawn) => {
        for (const { dough, piece, value, accept, isOut } of drawn) {
          const proposal = isOut
            ? await proposeNotCounting.call(bakery.early.caller, outOf({ doughId: doughId(dough) }))
            : await proposeAmendment.call(
                bakery.early.caller,
                asked({ doughId: doughId(dough), piece, value: String(value) }),
              )
          if (proposal.ok) valueOf(await decide(proposal.value.amendmentId, accept))
        }
        expect(await first()).toEqual(before)
        expect(await closingRow()).toEqual(closing)
      }),
      { numRuns: 6, seed: 11 },
    )
    expect((await look()).fault).toBeNull()
  }, 60_000)
})

describe('that the first result rested on a slip', () => {
  const sign = async (caller: Caller, change: object = {}) =>
    signSlip.call(caller, {
      trialId: planted.trialId,
      amendedHash: (await look()).slip?.amendedHash ?? 'a'.repeat(64),
      reason: 'The paper says 1900.',
      ...change,
    })

  it('is said by owner and head baker, both, over what was accepted', async () => {
    expect(refusalOf(await sign(bakery.head.caller))).toBe('nothing-amended')
    valueOf(await decide(await propose()))
    expect(refusalOf(await sign(bakery.early.caller))).toBe('not-allowed')
    expect(refusalOf(await sign(neighbour.owner.caller))).toBe('not-found')
    expect(refusalOf(await sign(bakery.head.caller, { amendedHash: 'b'.repeat(64) }))).toBe('stale-moved-on')
    expect(valueOf(await sign(bakery.head.caller))).toEqual({ isLast: false })
    expect(refusalOf(await sign(bakery.head.caller))).toBe('slip-signed-by-you')
    expect((await look()).slip).toMatchObject({ isSigned: false, signatures: [{ as: 'head_baker', by: 'Henk' }] })
    expect(valueOf(await sign(bakery.owner.caller))).toEqual({ isLast: true })
    expect((await look()).slip).toMatchObject({ isSigned: true, isAlone: false })
    expect(refusalOf(await sign(bakery.owner.caller))).toBe('slip-signed')
    // Another amendment makes another second result, for which nobody has signed.
    valueOf(await decide(await propose({ piece: 3 })))
    expect((await look()).slip).toMatchObject({ isSigned: false, signatures: [] })
  })

  it('is signed once by each, also by two at one moment', async () => {
    valueOf(await decide(await propose()))
    const both = await Promise.all([sign(bakery.head.caller), sign(bakery.owner.caller), sign(bakery.owner.caller)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(2)
    expect(await db().slipSignature.count({ where: { trialId: planted.trialId, isLast: true } })).toBe(1)
  })
})

describe('what somebody does past the rules', () => {
  test('a signature that nobody gave is no signature, and shows', async () => {
    valueOf(await decide(await propose()))
    const { slip } = await look()
    await db().slipSignature.create({
      data: {
        bakeryId: bakery.bakeryId,
        trialId: planted.trialId,
        amendedHash: slip!.amendedHash,
        signsAs: 'owner',
        isLast: true,
        reason: 'I say so.',
        signedById: bakery.owner.personId,
        at: testNow,
      },
    })
    expect(await look()).toMatchObject({ fault: 'not-of-record', second: null, slip: { isSigned: false } })
  })

  test('the app’s own role and the owner of the tables change and take away nothing', async () => {
    const id = await propose()
    valueOf(await decide(id))
    const key = { bakeryId_id: { bakeryId: bakery.bakeryId, id } }
    await expect(db().amendment.update({ where: key, data: { hash: 'b'.repeat(64) } })).rejects.toThrow()
    await expect(db().amendment.delete({ where: key })).rejects.toThrow()
    for (const statement of [
      `UPDATE amendment SET text = '{}' WHERE id = '${id}'`,
      `DELETE FROM amendment_verdict WHERE amendment_id = '${id}'`,
      `UPDATE amendment_verdict SET is_accepted = false, note = 'no' WHERE amendment_id = '${id}'`,
      'TRUNCATE slip_signature',
    ])
      await expect(connected(database.ownerUrl, (owner) => owner.query(statement))).rejects.toMatchObject({
        code: 'EV001',
      })
  })

  it.each([
    ['another new value', `UPDATE amendment SET text = replace(text, '"1900"', '"1990"') WHERE id = '$id'`, 'damaged'],
    [
      'another new value, with a hash that fits',
      `UPDATE amendment SET text = replace(text, '"1900"', '"1990"'), hash = encode(sha256(convert_to(replace(text, '"1900"', '"1990"'), 'UTF8')), 'hex') WHERE id = '$id'`,
      'not-of-record',
    ],
    [
      'a no out of a yes',
      `UPDATE amendment_verdict SET is_accepted = false, note = 'no' WHERE amendment_id = '$id'`,
      'not-of-record',
    ],
    ['a yes of nobody’s', `DELETE FROM amendment_verdict WHERE amendment_id = '$id'`, 'not-of-record'],
    [
      'an amendment gone',
      `DELETE FROM amendment_verdict WHERE amendment_id = '$id'; ALTER TABLE amendment DISABLE TRIGGER USER; DELETE FROM amendment WHERE id = '$id'; ALTER TABLE amendment ENABLE TRIGGER USER`,
      'gone',
    ],
  ])('shows where triggers are off: %s', async (_, statement, fault) => {
    const id = await propose()
    valueOf(await decide(id))
    expect((await look()).fault).toBeNull()
    await connected(database.superUrl, (client) =>
      client.query(
        `BEGIN; ALTER TABLE amendment DISABLE TRIGGER USER; ALTER TABLE amendment_verdict DISABLE TRIGGER USER; ${statement.replaceAll('$id', id)};
         ALTER TABLE amendment ENABLE TRIGGER USER; ALTER TABLE amendment_verdict ENABLE TRIGGER USER; COMMIT`,
      ),
    )
    expect(await look()).toMatchObject({ fault, second: null, mayPropose: false })
    expect(refusalOf(await proposeAmendment.call(bakery.early.caller, asked({ piece: 4 })))).toBe('amendments-broken')
  })

  it('concludes nothing of amendments where the book is not what was closed', async () => {
    valueOf(await decide(await propose()))
    await connected(database.superUrl, (client) =>
      client.query(
        `ALTER TABLE reading DISABLE TRIGGER USER; UPDATE reading SET value = 1 WHERE id = (SELECT id FROM reading WHERE trial_id = '${planted.trialId}' LIMIT 1); ALTER TABLE reading ENABLE TRIGGER USER`,
      ),
    )
    expect(valueOf(await getResult.call(bakery.early.caller, { trialId: planted.trialId })).after).toBeNull()
    expect(refusalOf(await proposeAmendment.call(bakery.early.caller, asked({ piece: 4 })))).toBe('seal-broken')
  })
})

it('is all in the record, under the trial', async () => {
  const id = await propose()
  valueOf(await decide(id))
  const actions = await db().auditEntry.findMany({
    where: { bakeryId: bakery.bakeryId, targetId: planted.trialId },
    orderBy: { number: 'asc' },
    select: { action: true, entryText: true },
  })
  expect(actions.map(({ action }) => action)).toEqual(['amendments.propose-amendment', 'amendments.decide-amendment'])
  expect(JSON.parse(actions[1]!.entryText)).toMatchObject({
    after: { amendment: id, accepted: true, as: 'second_person' },
  })
})
