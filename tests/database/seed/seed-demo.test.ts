import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import type { Caller } from '@/lib/kitchen/caller'
import { dayInZone } from '@/lib/kitchen/day-in-zone'
import { listDecisions } from '@/lib/kitchen/decisions/list-decisions'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { listFormulas } from '@/lib/kitchen/formulas/list-formulas'
import { signIn } from '@/lib/kitchen/people/sign-in'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { listTrials } from '@/lib/kitchen/trials/list-trials'
import { oatTrial, whiteTinTrial, wholemealTrial } from '@/seed/baked-trials'
import { demoBakery } from '@/seed/people'
import { seedDemo } from '@/seed/seed-demo'
import { makeFirstRunLink, valueOf } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { forLong } from '../../support/long'
import { placesTwice } from '../../support/places-twice'
import { entriesTwice, evidenceTwice, plansTwice, readingsTwice, versionsTwice } from '../../support/rows-and-texts'

/** In the bakery's zone just after midnight; and just before, with days of the trials on both sides of the change to summer time. */
const moments = forLong(['2026-03-02T00:05:00.000Z'], ['2026-03-02T00:05:00.000Z', '2026-04-09T22:55:00.000Z'])

describe.each(moments)('the demo as it is made at %s', (moment) => {
  const now = new Date(moment)
  let database: FreshDatabase
  let owner: Caller

  beforeAll(async () => {
    database = await freshDatabase()
    const signIns = await seedDemo(await makeFirstRunLink(now), now)
    const [, email, password] = /^(marit@\S+) {2}(\S+)/m.exec(signIns)!
    const from = { kind: 'desk', address: 'test', device: 'test', now: () => now } as const
    const session = valueOf(await signIn.call({ ...from, sessionSecret: null }, { email, password }))
    owner = { ...from, sessionSecret: session!.sessionSecret }
  }, 120_000)
  afterAll(() => database.drop())

  const trialAbout = async (formula: string, standing: string) => {
    const { waiting, baking, drafts, past } = valueOf(await listTrials.call(owner, {}))
    const found = [waiting, baking, drafts, past]
      .flatMap(({ rows }) => rows)
      .filter((trial) => trial.formula.includes(formula) && trial.standing === standing)
    expect(found).toHaveLength(1)
    return found[0]!.id
  }
  const resultOf = async (formula: string) =>
    valueOf(await getResult.call(owner, { trialId: await trialAbout(formula, 'closed') }))
  const verdicts = ({ analysis }: Awaited<ReturnType<typeof resultOf>>) =>
    analysis.comparison!.arms.map(({ verdict }) => verdict?.verdict ?? null)

  it('has two closed trials, each with an arm that is better and one of which nothing is claimed', async () => {
    const [wholemeal, oat] = [await resultOf('wholemeal'), await resultOf('oat')]
    for (const { analysis } of [wholemeal, oat]) expect(analysis).toMatchObject({ stage: 'whole', open: 0 })
    expect(verdicts(wholemeal)[1]).toBe('better')
    expect(verdicts(oat)[1]).toBe('better')
    expect(oatTrial.truth.gainShares[2]).toBe(0)
    expect(['undecided', 'no-worthwhile-difference']).toContain(verdicts(oat)[2])
    expect(wholemeal.batches.filter(({ state }) => state === 'lost')).toHaveLength(1)
    expect(oat.batches.every(({ state, uncounted }) => state === 'measured' && uncounted === null)).toBe(true)
    expect(oat.outOfOrderDays).toEqual([])
  })

  it('has one decision that both signed, with the new version in production, and one that waits for the owner', async () => {
    const { signed, waiting, kept, takenBack } = valueOf(await listDecisions.call(owner, {}))
    expect(signed.rows.map(({ formula, version }) => [formula, version?.number])).toEqual([
      ['Towpath wholemeal tin', 2],
    ])
    expect(waiting.rows.map(({ formula, missing }) => [formula, missing])).toEqual([
      ['Lock-keeper’s oat loaf', ['owner']],
    ])
    expect([kept.count, takenBack.count]).toEqual([0, 0])
    const signatures = await db().signature.findMany({
      where: { versionId: signed.rows[0]!.version!.id },
      select: { role: true },
      orderBy: { at: 'asc' },
    })
    expect(signatures.map(({ role }) => role)).toEqual(['head_baker', 'owner'])
    const { rows: formulas } = valueOf(await listFormulas.call(owner, {})).formulas
    expect(formulas.map(({ name, inProduction }) => [name, inProduction?.number])).toEqual([
      ['Lock-keeper’s oat loaf', 1],
      ['Osier white tin', 2],
      ['Towpath wholemeal tin', 2],
    ])
  })

  it('says of every reading whether it holds, and where', async () => {
    const { byTable, byReadings } = await placesTwice()
    expect(byTable).toEqual(byReadings)
    expect(byTable.length).toBe((await db().reading.count()) - 1)
  })

  it('has one amendment of what was closed, proposed by one and accepted by another', async () => {
    const amended = await db().amendment.findMany({ include: { verdict: true } })
    expect(amended).toHaveLength(1)
    expect(amended[0]!.verdict).toMatchObject({ isAccepted: true, signsAs: 'second_person' })
    expect(amended[0]!.verdict!.decidedById).not.toBe(amended[0]!.proposedById)
  })

  it('has one reading that was corrected by whoever took it, for a reason', async () => {
    const corrections = await db().reading.findMany({
      where: { supersedesId: { not: null } },
      include: { supersedes: true },
    })
    expect(corrections).toHaveLength(1)
    expect(corrections[0]).toMatchObject({
      personId: corrections[0]!.supersedes!.personId,
      reason: expect.stringContaining('Last digit') as string,
    })
    expect(Math.floor(corrections[0]!.value / 10)).toBe(corrections[0]!.supersedes!.value)
  })

  it('has a third reading of volume wherever two disagree, and only there', async () => {
    const volumes = await db().reading.findMany({
      where: { measure: { code: 'loaf-volume' } },
      orderBy: { repeat: 'asc' },
    })
    const firsts = volumes.filter(({ repeat }) => repeat === 1)
    let thirds = 0
    for (const { batchId, piece, value } of firsts) {
      const others = volumes.filter((other) => other.batchId === batchId && other.piece === piece && other.repeat > 1)
      const isApart = Math.abs(value - others[0]!.value) > 0.01 * (value + others[0]!.value)
      expect(others).toHaveLength(isApart ? 2 : 1)
      thirds += isApart ? 1 : 0
    }
    expect(firsts.length).toBeGreaterThan(100)
    expect(thirds).toBeGreaterThan(0)
  })

  it('has one trial in the middle of a mixing day, with work to do, and one that waits for approval', async () => {
    const { rows: shift } = valueOf(await getShift.call(owner, {})).trials
    expect(shift.map(({ state }) => state)).toEqual(['baking'])
    const ofDay = (day: number) => shift[0]!.batches.filter(({ dayNumber }) => dayNumber === day)
    const statesOf = (day: number) => ofDay(day).map(({ state }) => state)
    const today = whiteTinTrial.shifts.length + 1
    const doughs = ofDay(today).length
    for (let day = 1; day < today; day++)
      expect(statesOf(day)).toEqual(Array.from({ length: doughs }, () => 'measured'))
    expect(statesOf(today)).toEqual(['measured', 'measured', 'baked', 'in_work', 'waiting', 'waiting'])
    expect(ofDay(today).map(({ isNext }) => isNext)).toEqual([false, false, false, false, true, false])
    expect(ofDay(today)[2]!.missing.map(({ name }) => name)).toEqual(['Loaf weight', 'Loaf volume'])
    expect(statesOf(today + 1)).toEqual(Array.from({ length: doughs }, () => 'waiting'))
    await trialAbout('white', 'proposed')
  })

  it('knows nothing of the future, and its record runs forward and is whole', async () => {
    const latest = await db().reading.aggregate({ _max: { takenAt: true, receivedAt: true } })
    expect(latest._max.takenAt!.getTime()).toBeLessThanOrEqual(now.getTime())
    expect(latest._max.receivedAt!.getTime()).toBeLessThanOrEqual(now.getTime())
    const { fault, entries } = valueOf(await verifyRecord.call(owner, {}))
    expect(fault).toBeNull()
    expect(entries).toBeGreaterThan(500)
    const times = (await db().auditEntry.findMany({ orderBy: { number: 'asc' }, select: { at: true } })).map(({ at }) =>
      at.getTime(),
    )
    expect(times.filter((time, i) => i > 0 && time < times[i - 1]!)).toEqual([])
    expect(times.at(-1)).toBeLessThanOrEqual(now.getTime())
  })

  it.each([
    ['trial with a plan', plansTwice, 4],
    ['version that is signed', versionsTwice, 4],
    ['piece of evidence', evidenceTwice, 2],
    ['entry of the record', entriesTwice, 500],
    ['reading', readingsTwice, 400],
  ])('has rows that say what the frozen text says, of every %s', async (_, saidTwice, least) => {
    const all = await saidTwice()
    expect(all.length).toBeGreaterThanOrEqual(least)
    expect(all.map(({ of, byRows }) => ({ of, said: byRows }))).toEqual(
      all.map(({ of, byText }) => ({ of, said: byText })),
    )
  })

  it('bakes in the mornings of the days that it says', async () => {
    const begun = await db().batch.findMany({ where: { trial: { state: 'closed' } }, select: { begunAt: true } })
    const hours = begun.map(({ begunAt }) =>
      Number(
        new Intl.DateTimeFormat('en-GB', { timeZone: demoBakery.timeZone, hour: 'numeric', hourCycle: 'h23' }).format(
          begunAt!,
        ),
      ),
    )
    expect(new Set(hours)).toEqual(new Set([4, 5]))
    const days = new Set(begun.map(({ begunAt }) => dayInZone(begunAt!, demoBakery.timeZone)))
    expect(days.size).toBe(wholemealTrial.mixingDays + oatTrial.mixingDays)
  })
})
