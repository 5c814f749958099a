import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { db } from '@/lib/db/client'
import { command } from '@/lib/kitchen/command'
import { invitePerson } from '@/lib/kitchen/people/invite-person'
import { Refusal } from '@/lib/kitchen/refusal'
import { makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
})
afterAll(() => database.drop())

let runs = 0
/** A command of the test's own: adds a letter to the bakery's name, and answers how often it has worked. */
const lengthen = command({
  name: 'test.lengthen',
  input: z.strictObject({ by: z.string(), refuse: z.boolean().default(false) }),
  right: 'change-settings',
  async run({ tx, actor, input }) {
    const { name } = await tx.bakery.findUniqueOrThrow({ where: { bakeryId: actor.bakeryId }, select: { name: true } })
    await tx.bakery.update({ where: { bakeryId: actor.bakeryId }, data: { name: name + input.by } })
    if (input.refuse) throw new Refusal('not-found')
    return { value: { run: ++runs, none: null }, audit: { target: actor.bakeryId, after: input.by } }
  },
})
const nameNow = async () => (await db().bakery.findUniqueOrThrow({ where: { bakeryId: bakery.bakeryId } })).name
const entries = () => db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action: 'test.lengthen' } })
const sentForm = (formId: string) => ({ ...bakery.owner.caller, formId })

describe('a form that is sent', () => {
  it('counts once, and gets the same answer each time', async () => {
    const before = [(await nameNow()).length, await entries()] as const
    const caller = sentForm(randomUUID())
    const first = valueOf(await lengthen.call(caller, { by: 'a' }))
    expect(valueOf(await lengthen.call(caller, { by: 'a' }))).toEqual(first)
    expect([(await nameNow()).length, await entries()]).toEqual([before[0] + 1, before[1] + 1])
  })

  it('counts once when it is sent many times at one moment', async () => {
    const before = [(await nameNow()).length, await entries()] as const
    const caller = sentForm(randomUUID())
    const answers = await Promise.all(Array.from({ length: 8 }, () => lengthen.call(caller, { by: 'b' })))
    expect(new Set(answers.map((answer) => JSON.stringify(valueOf(answer)))).size).toBe(1)
    expect([(await nameNow()).length, await entries()]).toEqual([before[0] + 1, before[1] + 1])
  })

  it('counts again with other content, from another form, from another person, and without a form', async () => {
    const before = (await nameNow()).length
    const formId = randomUUID()
    for (const [caller, by] of [
      [sentForm(formId), 'c'],
      [sentForm(formId), 'd'],
      [sentForm(randomUUID()), 'c'],
      [bakery.owner.caller, 'c'],
      [bakery.owner.caller, 'c'],
    ] as const) {
      valueOf(await lengthen.call(caller, { by }))
    }
    expect((await nameNow()).length).toBe(before + 5)
    // Nothing is told to somebody who learnt another one's form.
    expect(refusalOf(await lengthen.call({ ...bakery.early.caller, formId }, { by: 'c' }))).toBe('not-allowed')
  })

  it('can be sent again after a refusal, which keeps nothing', async () => {
    const before = await nameNow()
    const caller = sentForm(randomUUID())
    expect(refusalOf(await lengthen.call(caller, { by: 'e', refuse: true }))).toBe('not-found')
    expect(await nameNow()).toBe(before)
    valueOf(await lengthen.call(caller, { by: 'e' }))
    expect(await nameNow()).toBe(`${before}e`)
  })

  it('leaves no secret behind', async () => {
    const formId = randomUUID()
    const { secret } = valueOf(
      await invitePerson.call(sentForm(formId), { name: 'Zoe', email: 'zoe@example.org', role: 'shift_baker' }),
    )
    expect(secret.length).toBeGreaterThan(10)
    expect(await db().answeredForm.count({ where: { formId } })).toBe(0)
  })
})
