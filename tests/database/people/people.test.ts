import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { db } from '@/lib/db/client'
import type { Caller } from '@/lib/kitchen/caller'
import { acceptInvitation } from '@/lib/kitchen/people/accept-invitation'
import { changeOwnPassword } from '@/lib/kitchen/people/change-own-password'
import { changePerson } from '@/lib/kitchen/people/change-person'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { endOtherSessions } from '@/lib/kitchen/people/end-other-sessions'
import { getAccount } from '@/lib/kitchen/people/get-account'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getInvitation } from '@/lib/kitchen/people/get-invitation'
import { getPerson } from '@/lib/kitchen/people/get-person'
import { getTeam } from '@/lib/kitchen/people/get-team'
import { invitePerson } from '@/lib/kitchen/people/invite-person'
import { findOwners } from '@/lib/kitchen/people/find-owners'
import { makeOwnerLink } from '@/lib/kitchen/people/make-owner-link'
import { signIn } from '@/lib/kitchen/people/sign-in'
import { signOut } from '@/lib/kitchen/people/sign-out'
import { startPasswordReset } from '@/lib/kitchen/people/start-password-reset'
import { withdrawInvitation } from '@/lib/kitchen/people/withdraw-invitation'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

const goodPassword = 'rye sours slowly in june'
const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())

describe('joining by a single-use link', () => {
  it('lets the invited person in once, under the name and role they were invited with', async () => {
    const { secret } = valueOf(
      await invitePerson.call(bakery.owner.caller, { name: 'Nia', email: 'NIA@mill-row.example ', role: 'head_baker' }),
    )
    expect(valueOf(await getInvitation.call(callerOf(null), { secret }))).toMatchObject({
      name: 'Nia',
      email: 'nia@mill-row.example',
      bakeryName: 'Mill Row',
    })
    const { sessionSecret } = valueOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))
    expect(valueOf(await getAccount.call(callerOf(sessionSecret), {}))).toMatchObject({
      name: 'Nia',
      role: 'head_baker',
    })
    expect(refusalOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))).toBe('link-dead')
    expect(refusalOf(await getInvitation.call(callerOf(null), { secret }))).toBe('link-dead')
  })

  it('is dead a day later, after it was withdrawn, and when made up', async () => {
    const invite = (email: string) =>
      invitePerson.call(bakery.owner.caller, { name: 'Late', email, role: 'shift_baker' })
    const { secret } = valueOf(await invite('late1@mill-row.example'))
    expect(refusalOf(await getInvitation.call(callerOf(null, minutes(24 * 60)), { secret }))).toBe('link-dead')
    expect(valueOf(await getInvitation.call(callerOf(null, minutes(24 * 60 - 1)), { secret })).name).toBe('Late')
    const { rows: invitations } = valueOf(await getTeam.call(bakery.owner.caller, {})).invitations
    const invitationId = invitations.find((entry) => entry.email === 'late1@mill-row.example')?.id
    valueOf(await withdrawInvitation.call(bakery.owner.caller, { invitationId }))
    expect(refusalOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))).toBe('link-dead')
    expect(refusalOf(await withdrawInvitation.call(bakery.owner.caller, { invitationId }))).toBe('stale-moved-on')
    expect(refusalOf(await getInvitation.call(callerOf(null), { secret: 'made-up' }))).toBe('link-dead')
  })

  it('is used by one of two who open it at the same moment', async () => {
    const { secret } = valueOf(
      await invitePerson.call(bakery.owner.caller, {
        name: 'Twin',
        email: 'twin@mill-row.example',
        role: 'shift_baker',
      }),
    )
    const tries = await Promise.all(
      [1, 2, 3].map(() => acceptInvitation.call(callerOf(null), { secret, password: goodPassword })),
    )
    expect(tries.filter((result) => result.ok)).toHaveLength(1)
    expect(await db().person.count({ where: { bakeryId: bakery.bakeryId, email: 'twin@mill-row.example' } })).toBe(1)
  })

  it('refuses a second open invitation, an address in use, and a password that anybody would try', async () => {
    const open = { name: 'Ola', email: 'ola@mill-row.example', role: 'shift_baker' }
    const { secret } = valueOf(await invitePerson.call(bakery.owner.caller, open))
    expect(refusalOf(await invitePerson.call(bakery.owner.caller, open))).toBe('invalid email:already-invited')
    expect(refusalOf(await acceptInvitation.call(callerOf(null), { secret, password: 'short' }))).toBe(
      'invalid password:too-short',
    )
    expect(refusalOf(await acceptInvitation.call(callerOf(null), { secret, password: 'mill row mill row mill' }))).toBe(
      'invalid password:password-names',
    )
    expect(
      refusalOf(
        await invitePerson.call(bakery.owner.caller, { name: 'Lars', email: bakery.late.email, role: 'shift_baker' }),
      ),
    ).toBe('invalid email:email-taken')
  })

  it('lets an address join that works elsewhere as well, and tells nobody so', async () => {
    const { email, password } = neighbour.late
    const answers: string[] = []
    for (const address of [email, 'known-nowhere@mill-row.example']) {
      const invited = valueOf(
        await invitePerson.call(bakery.owner.caller, { name: 'Lars', email: address, role: 'shift_baker' }),
      )
      answers.push(
        Object.keys(
          valueOf(await acceptInvitation.call(callerOf(null), { secret: invited.secret, password: goodPassword })),
        ).join(),
      )
    }
    expect(answers[0]).toBe(answers[1])
    const bakeryOf = async (typed: string) => {
      const session = valueOf(await signIn.call(callerOf(null), { email, password: typed }))
      return session && valueOf(await getDesk.call(callerOf(session.sessionSecret), {})).bakery.name
    }
    // Each password opens its own bakery, again and again.
    for (let round = 0; round < 8; round++)
      expect([await bakeryOf(password), await bakeryOf(goodPassword)]).toEqual([neighbour.name, bakery.name])
    expect(await bakeryOf('wrong')).toBeNull()
    for (const { bakeryId } of [bakery, neighbour])
      expect(await db().auditEntry.count({ where: { bakeryId, action: 'refused.sign-in' } })).toBeGreaterThan(0)
  })

  it('lifts no wait of somebody of the same address elsewhere, by joining or by a new password', async () => {
    const [here, victims] = [await makeBakery('Here'), await makeBakery('Victims')]
    const { email, password } = victims.early
    const { secret } = valueOf(await invitePerson.call(here.owner.caller, { name: 'Esi', email, role: 'shift_baker' }))
    valueOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))
    const { id } = await db().person.findFirstOrThrow({ where: { bakeryId: here.bakeryId, email } })
    for (let tries = 0; tries < 5; tries++)
      expect(valueOf(await signIn.call(callerOf(null), { email, password: 'wrong' }))).toBeNull()
    const again = valueOf(await startPasswordReset.call(here.owner.caller, { personId: id }))
    valueOf(await acceptInvitation.call(callerOf(null), { secret: again.secret, password: `${goodPassword} too` }))
    expect(valueOf(await signIn.call(callerOf(null), { email, password: `${goodPassword} too` }))).not.toBeNull()
    expect(valueOf(await signIn.call(callerOf(null), { email, password }))).toBeNull()
  })

  it('makes room again when the former invitation ran out', async () => {
    const again = { name: 'Pia', email: 'pia@mill-row.example', role: 'shift_baker' }
    valueOf(await invitePerson.call(bakery.owner.caller, again))
    const later = minutes(25 * 60)
    const session = valueOf(
      await signIn.call(callerOf(null, later), { email: bakery.owner.email, password: bakery.owner.password }),
    )
    valueOf(await invitePerson.call(callerOf(session!.sessionSecret, later), again))
  })

  it('lets the head baker invite shift bakers only, and a shift baker nobody', async () => {
    const role = (value: string) => ({ name: 'Rut', email: `rut-${value}@mill-row.example`, role: value })
    valueOf(await invitePerson.call(bakery.head.caller, role('shift_baker')))
    expect(refusalOf(await invitePerson.call(bakery.head.caller, role('owner')))).toBe(
      'invalid role:role-not-yours-to-give',
    )
    expect(refusalOf(await invitePerson.call(bakery.early.caller, role('shift_baker')))).toBe('not-allowed')
    expect(refusalOf(await invitePerson.call(callerOf(null), role('shift_baker')))).toBe('not-signed-in')
  })
})

describe('a session', () => {
  it('ends half an hour after its last use, and twelve hours after it was opened', async () => {
    const { sessionSecret } = valueOf(
      await signIn.call(callerOf(null), { email: bakery.late.email, password: bakery.late.password }),
    )!
    expect((await getAccount.call(callerOf(sessionSecret, minutes(29)), {})).ok).toBe(true)
    expect((await getAccount.call(callerOf(sessionSecret, minutes(58)), {})).ok).toBe(true)
    expect(refusalOf(await getAccount.call(callerOf(sessionSecret, minutes(58 + 30)), {}))).toBe('not-signed-in')
    const day = valueOf(
      await signIn.call(callerOf(null), { email: bakery.late.email, password: bakery.late.password }),
    )!
    for (let at = 29; at < 12 * 60; at += 29)
      expect((await getAccount.call(callerOf(day.sessionSecret, minutes(at)), {})).ok).toBe(true)
    expect(refusalOf(await getAccount.call(callerOf(day.sessionSecret, minutes(12 * 60)), {}))).toBe('not-signed-in')
  })

  it('ends at once with sign-out, with switching off, and with another role', async () => {
    const open = async () =>
      valueOf(await signIn.call(callerOf(null), { email: bakery.late.email, password: bakery.late.password }))!
        .sessionSecret
    const signedOut = await open()
    valueOf(await signOut.call(callerOf(signedOut), {}))
    expect(refusalOf(await getAccount.call(callerOf(signedOut), {}))).toBe('not-signed-in')

    const switchedOff = await open()
    const person = valueOf(await getPerson.call(bakery.owner.caller, { personId: bakery.late.personId }))
    const change = { personId: bakery.late.personId, name: 'Lars', role: 'shift_baker' }
    valueOf(await changePerson.call(bakery.owner.caller, { ...change, seenRevision: person.revision, works: false }))
    expect(refusalOf(await getAccount.call(callerOf(switchedOff), {}))).toBe('not-signed-in')
    expect(
      valueOf(await signIn.call(callerOf(null), { email: bakery.late.email, password: bakery.late.password })),
    ).toBeNull()
    valueOf(await changePerson.call(bakery.owner.caller, { ...change, seenRevision: person.revision + 1, works: true }))
    const promoted = await open()
    valueOf(
      await changePerson.call(bakery.owner.caller, {
        ...change,
        role: 'head_baker',
        seenRevision: person.revision + 2,
        works: true,
      }),
    )
    expect(refusalOf(await getAccount.call(callerOf(promoted), {}))).toBe('not-signed-in')
    valueOf(await changePerson.call(bakery.owner.caller, { ...change, seenRevision: person.revision + 3, works: true }))
  })

  it('ends elsewhere when the password is changed, and when its holder says so', async () => {
    const open = async () =>
      valueOf(await signIn.call(callerOf(null), { email: neighbour.late.email, password: neighbour.late.password }))!
        .sessionSecret
    const [here, there] = [await open(), await open()]
    valueOf(await endOtherSessions.call(callerOf(here), {}))
    expect(refusalOf(await getAccount.call(callerOf(there), {}))).toBe('not-signed-in')
    const other = await open()
    expect(
      refusalOf(await changeOwnPassword.call(callerOf(here, testNow, 'not it'), { newPassword: goodPassword })),
    ).toBe('wrong-password password:not-your-password')
    expect(refusalOf(await changeOwnPassword.call(callerOf(here, testNow), { newPassword: goodPassword }))).toBe(
      'wrong-password password:not-your-password',
    )
    valueOf(
      await changeOwnPassword.call(callerOf(here, testNow, neighbour.late.password), { newPassword: goodPassword }),
    )
    expect(refusalOf(await getAccount.call(callerOf(other), {}))).toBe('not-signed-in')
    expect((await getAccount.call(callerOf(here), {})).ok).toBe(true)
    expect(
      valueOf(await signIn.call(callerOf(null), { email: neighbour.late.email, password: neighbour.late.password })),
    ).toBeNull()
    expect(
      valueOf(await signIn.call(callerOf(null), { email: neighbour.late.email, password: goodPassword })),
    ).not.toBeNull()
  })
})

describe('a new password by link', () => {
  it('is started by who manages the person, with their own password, and ends every session', async () => {
    const ask = (caller = bakery.owner.caller, personId = bakery.early.personId) =>
      startPasswordReset.call(caller, { personId })
    expect(refusalOf(await ask(callerOf(bakery.owner.sessionSecret)))).toBe('wrong-password password:not-your-password')
    expect(refusalOf(await ask(bakery.owner.caller, bakery.owner.personId))).toBe('not-allowed')
    expect(refusalOf(await ask(bakery.head.caller, bakery.owner.personId))).toBe('not-allowed')
    expect(refusalOf(await ask(bakery.owner.caller, neighbour.early.personId))).toBe('not-found')
    const { secret } = valueOf(await ask(bakery.head.caller))
    valueOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))
    expect(refusalOf(await getAccount.call(bakery.early.caller, {}))).toBe('not-signed-in')
    expect(
      valueOf(await signIn.call(callerOf(null), { email: bakery.early.email, password: bakery.early.password })),
    ).toBeNull()
    expect(
      valueOf(await signIn.call(callerOf(null), { email: bakery.early.email, password: goodPassword })),
    ).not.toBeNull()
  })
})

describe('a link outlives no right', () => {
  const reset = async (by: Caller, personId: string) => valueOf(await startPasswordReset.call(by, { personId })).secret
  const accept = async (secret: string) =>
    refusalOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))
  const change = async (house: TestBakery, person: { personId: string; name: string }, more: object) => {
    const { revision, role } = await db().person.findUniqueOrThrow({
      where: { bakeryId_id: { bakeryId: house.bakeryId, id: person.personId } },
      select: { revision: true, role: true },
    })
    valueOf(
      await changePerson.call(house.owner.caller, {
        personId: person.personId,
        seenRevision: revision,
        name: person.name,
        role,
        works: true,
        ...more,
      }),
    )
  }

  it('of the person that it is for: a shift baker who becomes owner is no prize for an old reset link', async () => {
    const house = await makeBakery('Promoted')
    const secret = await reset(house.head.caller, house.early.personId)
    await change(house, house.early, { role: 'owner' })
    expect(await accept(secret)).toBe('link-dead')
    expect(refusalOf(await getInvitation.call(callerOf(null), { secret }))).toBe('link-dead')
  })

  it('of the person who made it: switched off or demoted, their links are dead', async () => {
    const house = await makeBakery('Switched off')
    const [join, forEarly] = [
      valueOf(
        await invitePerson.call(house.head.caller, { name: 'Nia', email: 'nia@switched.example', role: 'shift_baker' }),
      ).secret,
      await reset(house.head.caller, house.early.personId),
    ]
    await change(house, house.head, { works: false })
    expect([await accept(join), await accept(forEarly)]).toEqual(['link-dead', 'link-dead'])
    const { rows: invitations } = valueOf(await getTeam.call(house.owner.caller, {})).invitations
    expect(invitations).toEqual([])
    const other = await makeBakery('Demoted')
    const later = await reset(other.head.caller, other.late.personId)
    await change(other, other.head, { role: 'shift_baker' })
    expect(await accept(later)).toBe('link-dead')
  })

  it('also where a row was changed past the commands: accepting asks whether the inviter may still do so', async () => {
    const house = await makeBakery('Past the commands')
    const [join, forLate] = [
      valueOf(
        await invitePerson.call(house.head.caller, { name: 'Oda', email: 'oda@past.example', role: 'shift_baker' }),
      ).secret,
      await reset(house.head.caller, house.late.personId),
    ]
    const where = { bakeryId_id: { bakeryId: house.bakeryId, id: house.head.personId } }
    await db().person.update({ where, data: { role: 'shift_baker' } })
    expect([await accept(join), await accept(forLate)]).toEqual(['link-dead', 'link-dead'])
    await db().person.update({ where, data: { role: 'head_baker' } })
    await db().person.update({
      where: { bakeryId_id: { bakeryId: house.bakeryId, id: house.late.personId } },
      data: { role: 'owner' },
    })
    expect(await accept(forLate)).toBe('link-dead')
    expect((await acceptInvitation.call(callerOf(null), { secret: join, password: goodPassword })).ok).toBe(true)
  })

  it('and none is left with a session when the role changes while the link is being used', async () => {
    const house = await makeBakery('At once')
    const secret = await reset(house.head.caller, house.early.personId)
    const [used] = await Promise.all([
      acceptInvitation.call(callerOf(null), { secret, password: goodPassword }),
      change(house, house.early, { role: 'owner' }),
    ])
    const session = used.ok ? used.value.sessionSecret : null
    expect(refusalOf(await getAccount.call(callerOf(session), {}))).toBe('not-signed-in')
  })
})

describe('changing people and settings', () => {
  it('keeps an owner, lets nobody change themselves, and tells who was there first', async () => {
    const own = valueOf(await getPerson.call(neighbour.owner.caller, { personId: neighbour.owner.personId }))
    const asNow = { personId: own.id, seenRevision: own.revision, name: own.name, role: 'shift_baker', works: true }
    expect(refusalOf(await changePerson.call(neighbour.owner.caller, asNow))).toBe('own-role')
    const head = valueOf(await getPerson.call(neighbour.owner.caller, { personId: neighbour.head.personId }))
    const rename = { personId: head.id, seenRevision: head.revision, name: 'Henk B.', role: 'head_baker', works: true }
    valueOf(await changePerson.call(neighbour.owner.caller, rename))
    const second = await changePerson.call(neighbour.owner.caller, { ...rename, name: 'Other' })
    expect(second).toMatchObject({
      ok: false,
      refusal: { code: 'stale', facts: { who: 'Olga', at: '2 Mar 2026, 05:00' } },
    })
  })

  it('never leaves a bakery without an owner when two owners demote each other at once', async () => {
    const twoOwners = await makeBakery('Two Owners')
    const head = valueOf(await getPerson.call(twoOwners.owner.caller, { personId: twoOwners.head.personId }))
    valueOf(
      await changePerson.call(twoOwners.owner.caller, {
        personId: head.id,
        seenRevision: head.revision,
        name: head.name,
        role: 'owner',
        works: true,
      }),
    )
    const second = valueOf(
      await signIn.call(callerOf(null), { email: twoOwners.head.email, password: twoOwners.head.password }),
    )!
    const demote = (personId: string, seenRevision: number) => ({
      personId,
      seenRevision,
      name: 'X',
      role: 'shift_baker',
      works: true,
    })
    const results = await Promise.all([
      changePerson.call(twoOwners.owner.caller, demote(head.id, head.revision + 1)),
      changePerson.call(callerOf(second.sessionSecret), demote(twoOwners.owner.personId, 1)),
    ])
    expect(results.filter((result) => result.ok)).toHaveLength(1)
    expect(await db().person.count({ where: { bakeryId: twoOwners.bakeryId, role: 'owner', endedAt: null } })).toBe(1)
  })

  it('keeps settings of the owner, and refuses them to the head baker', async () => {
    const settings = {
      bakeryName: 'Mill Row',
      worksAlone: true,
      costChangeLimitPct: 2.5,
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
    }
    expect(refusalOf(await changeSettings.call(neighbour.head.caller, { ...settings, seenRevision: 1 }))).toBe(
      'not-allowed',
    )
    expect(
      refusalOf(
        await changeSettings.call(neighbour.owner.caller, { ...settings, timeZone: 'Mars/Crater', seenRevision: 1 }),
      ),
    ).toBe('invalid timeZone:unknown-zone')
    for (const dayTurnsAtH of [-1, 12, 5.5, Number.NaN])
      expect(
        refusalOf(await changeSettings.call(neighbour.owner.caller, { ...settings, dayTurnsAtH, seenRevision: 1 })),
      ).toMatch(/^invalid dayTurnsAtH:/)
    await expect(
      db().bakery.update({ where: { bakeryId: neighbour.bakeryId }, data: { dayTurnsAtH: 12 } }),
    ).rejects.toThrow('bakery_day_turns_in_the_night')
    for (const [name, values, constraint] of [
      ['stationIdleMin', [1, 61, 2.5, Number.NaN], 'bakery_station_idle_within_bounds'],
      ['pinLastsH', [0, 13, 1.5, Number.NaN], 'bakery_pin_lasts_within_bounds'],
    ] as const)
      for (const value of values) {
        const changed = { ...settings, [name]: value, seenRevision: 1 }
        expect(refusalOf(await changeSettings.call(neighbour.owner.caller, changed))).toMatch(
          new RegExp(`^invalid ${name}:`),
        )
        if (Number.isInteger(value))
          await expect(
            db().bakery.update({ where: { bakeryId: neighbour.bakeryId }, data: { [name]: value } }),
          ).rejects.toThrow(constraint)
      }
    for (const [looks, fault] of [
      [{ restLookMin: 15 }, 'invalid restMostMin:missing'],
      [{ coolMostMin: 15 }, 'invalid coolLookMin:missing'],
      [{ retardLookMin: 60, retardMostMin: 60 }, 'invalid retardMostMin:not-above-look'],
      [{ foldEveryMin: 0 }, 'invalid foldEveryMin:too-small'],
    ] as const)
      expect(
        refusalOf(await changeSettings.call(neighbour.owner.caller, { ...settings, ...looks, seenRevision: 1 })),
      ).toBe(fault)
    await expect(
      db().bakery.update({ where: { bakeryId: neighbour.bakeryId }, data: { restLookMin: 15, restMostMin: 15 } }),
    ).rejects.toThrow('bakery_rest_in_order')
    valueOf(await changeSettings.call(neighbour.owner.caller, { ...settings, seenRevision: 1 }))
    expect(refusalOf(await changeSettings.call(neighbour.owner.caller, { ...settings, seenRevision: 1 }))).toBe('stale')
  })

  it('shows e-mail addresses and invitations to those who manage people, and to nobody else', async () => {
    const seen = valueOf(await getTeam.call(neighbour.early.caller, {}))
    expect(seen.people.rows.every((person) => person.email === null)).toBe(true)
    expect(seen.invitations).toMatchObject({ rows: [], count: 0 })
    expect(JSON.stringify(seen)).not.toContain('@')
  })
})

describe('a link that is made on the machine', () => {
  const machine = (whose: { bakeryId: string }, personId: string) =>
    makeOwnerLink.call(
      {
        kind: 'job',
        job: 'owner-link',
        bakeryId: whose.bakeryId,
        address: 'this machine',
        device: 'this machine',
        now: () => testNow,
      },
      { personId },
    )
  const ownersOf = async (input: object) =>
    valueOf(await findOwners.call(callerOf(null), input)).map(({ email }) => email)

  it('lets an owner choose a new password within an hour, ends former links, and stands in the record', async () => {
    const former = valueOf(await machine(bakery, bakery.owner.personId)).secret
    const { secret } = valueOf(await machine(bakery, bakery.owner.personId))
    expect(refusalOf(await getInvitation.call(callerOf(null), { secret: former }))).toBe('link-dead')
    expect(refusalOf(await getInvitation.call(callerOf(null, minutes(60)), { secret }))).toBe('link-dead')
    const { sessionSecret } = valueOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))
    const entries = await db().auditEntry.findMany({
      where: { bakeryId: bakery.bakeryId, action: 'people.make-owner-link' },
      select: { targetId: true, by: true, personId: true, entryText: true },
    })
    expect(entries).toHaveLength(2)
    expect(entries[0]).toMatchObject({
      targetId: bakery.owner.personId,
      by: 'job',
      personId: null,
      entryText: expect.stringContaining('"address":"this machine"'),
    })
    expect(JSON.parse(entries[0]!.entryText)).toMatchObject({ format: 2, who: { kind: 'job', job: 'owner-link' } })
    // Their other sessions are over.
    expect(refusalOf(await getTeam.call(bakery.owner.caller, {}))).toBe('not-signed-in')
    bakery.owner.caller = callerOf(sessionSecret, testNow, goodPassword)
  })

  it('is for one of the owners there are, and for nobody else', async () => {
    expect(await ownersOf({})).toEqual(expect.arrayContaining([bakery.owner.email, neighbour.owner.email]))
    expect(await ownersOf({ email: bakery.owner.email.toUpperCase(), bakery: bakery.name })).toEqual([
      bakery.owner.email,
    ])
    for (const email of [bakery.head.email, 'nobody@mill-row.example']) expect(await ownersOf({ email })).toEqual([])
    expect(refusalOf(await machine(bakery, bakery.head.personId))).toBe('not-found')
    expect(refusalOf(await machine(bakery, neighbour.owner.personId))).toBe('not-found')
  })

  it('is made by the job alone, in a bakery that there is', async () => {
    expect(refusalOf(await makeOwnerLink.call(bakery.owner.caller, { personId: bakery.owner.personId }))).toBe(
      'not-allowed',
    )
    expect(refusalOf(await machine({ bakeryId: '00000000-0000-7000-8000-000000000000' }, bakery.owner.personId))).toBe(
      'not-signed-in',
    )
  })

  it('is dead when the owner is no owner any more', async () => {
    const second = valueOf(
      await invitePerson.call(bakery.owner.caller, { name: 'Second', email: 'second@mill-row.example', role: 'owner' }),
    )
    valueOf(await acceptInvitation.call(callerOf(null), { secret: second.secret, password: goodPassword }))
    const { id } = await db().person.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, email: 'second@mill-row.example' },
    })
    const { secret } = valueOf(await machine(bakery, id))
    valueOf(
      await changePerson.call(bakery.owner.caller, {
        personId: id,
        name: 'Second',
        role: 'shift_baker',
        works: true,
        seenRevision: 1,
      }),
    )
    expect(refusalOf(await acceptInvitation.call(callerOf(null), { secret, password: goodPassword }))).toBe('link-dead')
  })
})

describe('a clock that was ahead', () => {
  afterEach(() => void vi.useRealTimers())

  it('leaves no session and no link that outlast it, and lets people be switched off all the same', async () => {
    const room = await makeBakery('Ahead')
    // Further than any machine's clock when this runs.
    const centuryOn = minutes(100 * 365 * 24 * 60)
    vi.useFakeTimers({ toFake: ['Date'], now: centuryOn })
    const session = valueOf(
      await signIn.call(callerOf(null, centuryOn), { email: room.owner.email, password: room.owner.password }),
    )!
    const ahead = callerOf(session.sessionSecret, centuryOn, room.owner.password)
    const { secret } = valueOf(
      await invitePerson.call(ahead, { name: 'Later', email: 'later@mill-row.example', role: 'shift_baker' }),
    )
    const unused = valueOf(
      await invitePerson.call(ahead, { name: 'Unused', email: 'unused@mill-row.example', role: 'shift_baker' }),
    )
    valueOf(await acceptInvitation.call(callerOf(null, centuryOn), { secret, password: goodPassword }))
    // The clock is put right.
    vi.useRealTimers()
    expect(refusalOf(await getTeam.call(callerOf(session.sessionSecret), {}))).toBe('not-signed-in')
    expect(refusalOf(await getInvitation.call(callerOf(null), { secret: unused.secret }))).toBe('link-dead')
    const { id } = await db().person.findFirstOrThrow({
      where: { bakeryId: room.bakeryId, email: 'later@mill-row.example' },
    })
    valueOf(
      await changePerson.call(room.owner.caller, {
        personId: id,
        name: 'Later',
        role: 'shift_baker',
        works: false,
        seenRevision: 1,
      }),
    )
  })

  it('and a zone or a locale that somebody made up are refused in words', async () => {
    const settings = {
      bakeryName: 'Mill Row',
      currency: 'EUR',
      region: 'eu',
      massUnits: 'metric',
      temperatureUnits: 'celsius',
      worksAlone: false,
      costChangeLimitPct: 1,
      dayTurnsAtH: 0,
      stationIdleMin: 10,
      pinLastsH: 4,
      language: null,
      seenRevision: 1,
    }
    for (const [timeZone, locale, faults] of [
      ['Mars/Olympus', 'en-GB', 'timeZone:unknown-zone'],
      ['Europe/Berlin', 'xx-forged', 'locale:wrong-choice'],
      ['../../etc/passwd', '', 'locale:wrong-choice'],
    ] as const) {
      expect(refusalOf(await changeSettings.call(neighbour.owner.caller, { ...settings, timeZone, locale }))).toContain(
        faults,
      )
    }
  })
})
