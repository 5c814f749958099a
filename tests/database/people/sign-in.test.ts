import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { signIn } from '@/lib/kitchen/people/sign-in'
import { startPasswordReset } from '@/lib/kitchen/people/start-password-reset'
import { maySignIn, rememberSignIn, signInName, takeBackSignIn } from '@/lib/auth/sign-in-attempts'
import { setUpBakery } from '@/lib/kitchen/people/set-up-bakery'
import { hashPassword } from '@/lib/auth/password-hash'
import {
  callerOf,
  makeBakery,
  makeFirstRunLink,
  refusalOf,
  testNow,
  valueOf,
  type TestBakery,
} from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)

describe('guessing a password', () => {
  let database: FreshDatabase
  let bakery: TestBakery
  beforeAll(async () => {
    database = await freshDatabase()
    bakery = await makeBakery()
  })
  afterAll(() => database.drop())

  it('is judged five times, then refused alike whether right or wrong, until the wait is over', async () => {
    const { email, password } = bakery.early
    const guess = (typed: string, at = testNow) => signIn.call(callerOf(null, at), { email, password: typed })
    for (let tries = 0; tries < 5; tries++) expect(valueOf(await guess('wrong'))).toBeNull()
    expect(valueOf(await guess(password))).toBeNull()
    // The wait doubles from two seconds; a right password after it is taken and forgets the failures.
    expect(valueOf(await guess(password, minutes(1)))).not.toBeNull()
    expect(valueOf(await guess('wrong', minutes(2)))).toBeNull()
    expect(valueOf(await guess(password, minutes(2)))).not.toBeNull()
  })

  it('counts tries that come at the same moment', async () => {
    const { email } = bakery.late
    await Promise.all(Array.from({ length: 40 }, () => signIn.call(callerOf(null), { email, password: 'wrong' })))
    const record = await db().auditEntry.count({
      where: { bakeryId: bakery.bakeryId, action: 'refused.sign-in', targetId: bakery.late.personId },
    })
    expect(record).toBe(5)
    expect(valueOf(await signIn.call(callerOf(null), { email, password: bakery.late.password }))).toBeNull()
  })

  it('waits a quarter of an hour at most, and after a hundred in a row until the owner makes a new link', async () => {
    const { email, password, personId } = bakery.head
    const { address } = callerOf(null)
    const who = signInName({ bakeryId: bakery.bakeryId, personId }, email)
    let judged = 0
    for (let minute = 0; minute < 4 * 60; minute += 1)
      if (await maySignIn(db(), { who, address }, minutes(minute))) judged++
    expect(judged).toBeLessThanOrEqual(100)
    expect(valueOf(await signIn.call(callerOf(null, minutes(4 * 60 + 16)), { email, password }))).not.toBeNull()
  })

  it('is counted apart from the password asked again for what matters', async () => {
    const { sessionSecret } = bakery.owner
    const ask = (password: string) =>
      startPasswordReset.call(callerOf(sessionSecret, testNow, password), { personId: bakery.early.personId })
    for (let tries = 0; tries < 5; tries++)
      expect(refusalOf(await ask('wrong'))).toBe('wrong-password password:not-your-password')
    expect(refusalOf(await ask(bakery.owner.password))).toBe('too-many-tries')
    expect(
      valueOf(await signIn.call(callerOf(null), { email: bakery.owner.email, password: bakery.owner.password })),
    ).not.toBeNull()
  })

  it('by a stranger shuts nobody out: neither of commands while signed in, nor of signing in at another address', async () => {
    const { owner, late } = await makeBakery('Stranger Row')
    const from = (address: string) => ({ ...callerOf(null), address })
    for (let tries = 0; tries < 12; tries++)
      expect(valueOf(await signIn.call(from('203.0.113.9'), { email: owner.email, password: 'wrong' }))).toBeNull()
    valueOf(await startPasswordReset.call(owner.caller, { personId: late.personId }))
    expect(
      valueOf(await signIn.call(from('198.51.100.7'), { email: owner.email, password: owner.password })),
    ).not.toBeNull()
    expect(valueOf(await signIn.call(from('203.0.113.9'), { email: owner.email, password: owner.password }))).toBeNull()
  })

  it('is judged a hundred times in a row at most for one person, from however many addresses; where they signed in of late they still may', async () => {
    const { owner } = await makeBakery('Many Doors')
    const at = (address: string) => ({ who: owner.email, address })
    await rememberSignIn(db(), at('198.51.100.7'), testNow)
    let judged = 0
    for (let guess = 0; guess < 400; guess++)
      if (await maySignIn(db(), at(`203.0.113.${guess}`), minutes(2 * guess))) judged++
    expect(judged).toBeLessThanOrEqual(100)
    expect(judged).toBeGreaterThan(50)
    expect(await maySignIn(db(), at('192.0.2.1'), minutes(800))).toBe(false)
    expect(await maySignIn(db(), at('198.51.100.7'), minutes(800))).toBe(true)
  })

  it('gives whoever holds one bakery of an address no more guesses at another', async () => {
    const tried = { who: 'two-doors', address: '203.0.113.77' }
    let judged = 0
    for (let guess = 0; guess < 400; guess++) {
      const at = minutes(2 * guess)
      if (await maySignIn(db(), tried, at)) judged++
      // A right password for the other bakery takes itself back, and no guess.
      if (await maySignIn(db(), tried, at)) await takeBackSignIn(db(), tried)
    }
    expect(judged).toBeLessThanOrEqual(100)
    expect(judged).toBeGreaterThan(20)
  })

  it('of ever other people from one address is slowed down as well', async () => {
    let judged = 0
    for (let guess = 0; guess < 80; guess++)
      if (await maySignIn(db(), { who: `p${guess}@sprayed.example`, address: '203.0.113.200' }, testNow)) judged++
    expect(judged).toBe(50)
  })

  it('leaves no wait behind that was begun while the clock was wrong', async () => {
    const { owner } = await makeBakery('Wrong Clock')
    const yearsOn = minutes(3 * 365 * 24 * 60)
    const guess = (at: Date, password: string) => signIn.call(callerOf(null, at), { email: owner.email, password })
    for (let tries = 0; tries < 6; tries++) expect(valueOf(await guess(yearsOn, 'wrong'))).toBeNull()
    expect(valueOf(await guess(yearsOn, owner.password))).toBeNull()
    expect(valueOf(await guess(testNow, owner.password))).not.toBeNull()
  })

  it('gives the same answer for an unknown address', async () => {
    expect(valueOf(await signIn.call(callerOf(null), { email: 'nobody@mill-row.example', password: 'x' }))).toBeNull()
    expect(refusalOf(await signIn.call(callerOf(null), { email: 'nobody', password: '' }))).toBe(
      'invalid email:not-email password:missing',
    )
  })

  it('is against an Argon2id hash with the parameters that are stated', async () => {
    expect(await hashPassword('rye sours slowly in june')).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
  })
})

describe('the first-run link', () => {
  it('sets up one bakery, once, and is dead after a day', async () => {
    const database = await freshDatabase()
    try {
      const secret = await makeFirstRunLink()
      const form = {
        secret,
        name: 'Ada',
        email: 'ada@first.example',
        password: 'rye sours slowly in june',
        bakeryName: 'First',
        timeZone: 'Europe/Berlin',
        locale: 'en-GB',
        currency: 'EUR',
        region: 'eu',
        massUnits: 'metric',
        temperatureUnits: 'celsius',
      }
      expect(refusalOf(await setUpBakery.call(callerOf(null, minutes(24 * 60)), form))).toBe('link-dead')
      expect(refusalOf(await setUpBakery.call(callerOf(null), { ...form, secret: 'guessed' }))).toBe('link-dead')
      expect(
        refusalOf(await setUpBakery.call(callerOf(null), { ...form, currency: 'QQQ', email: 'no', role: 'owner' })),
      ).toBe('invalid email:not-email currency:wrong-choice role:unknown-field')
      const tries = await Promise.all(
        [1, 2, 3].map((number) => setUpBakery.call(callerOf(null), { ...form, email: `ada${number}@first.example` })),
      )
      expect(tries.filter((result) => result.ok)).toHaveLength(1)
      expect(await db().bakery.count()).toBe(1)
    } finally {
      await database.drop()
    }
  })
})
