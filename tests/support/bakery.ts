import { randomUUID } from 'node:crypto'
import { makeSecret, hashSecret } from '../../lib/auth/secret'
import { openSession } from '../../lib/auth/sessions'
import { hash } from '@node-rs/argon2'
import { db } from '../../lib/db/client'
import type { Role } from '../../lib/db/generated/enums'
import { inTransaction } from '../../lib/db/transaction'
import type { DeskCaller } from '../../lib/kitchen/caller'
import { createBakery, createPerson } from '../../lib/kitchen/people/new-bakery'
import type { Result } from '../../lib/kitchen/result'

export type TestPerson = {
  personId: string
  name: string
  email: string
  password: string
  sessionSecret: string
  caller: DeskCaller
}
export type TestBakery = {
  bakeryId: string
  name: string
  owner: TestPerson
  head: TestPerson
  early: TestPerson
  late: TestPerson
}

/** The clock of the tests: a Monday at four in the morning, UTC. */
export const testNow = new Date('2026-03-02T04:00:00.000Z')

/** A caller at a time of the test's own. */
export function callerOf(sessionSecret: string | null, now: Date = testNow, password?: string): DeskCaller {
  return { kind: 'desk', sessionSecret, address: 'test', device: 'test', now: () => now, password }
}

// The cheapest lawful parameters: a test needs many people, and the parameters in use have a test of their own.
const cheap = { algorithm: 2, memoryCost: 8, timeCost: 1, parallelism: 1 } as const

/**
 * A bakery with an owner, a head baker and two shift bakers, all signed in, made through the same steps as the
 * commands use. Each call makes another bakery in the same database.
 */
export async function makeBakery(name = 'Mill Row', now: Date = testNow): Promise<TestBakery> {
  const key = randomUUID().slice(0, 8)
  await db().install.createMany({
    data: [{ id: 1, epoch: randomUUID(), kind: 'real', createdAt: now }],
    skipDuplicates: true,
  })
  const bakeryId = await inTransaction((tx) =>
    createBakery(
      tx,
      name,
      {
        timeZone: 'Europe/Berlin',
        locale: 'en-GB',
        currency: 'EUR',
        region: 'eu',
        massUnits: 'metric',
        temperatureUnits: 'celsius',
      },
      now,
    ),
  )
  const makePerson = async (who: string, role: Role): Promise<TestPerson> => {
    const email = `${who.toLowerCase()}-${key}@mill-row.example`
    const password = `quiet dough at dawn ${who} ${key}`
    const passwordHash = await hash(password, cheap)
    const { personId, sessionSecret } = await inTransaction(async (tx) => {
      const personId = await createPerson(tx, bakeryId, { name: who, email, role, passwordHash }, now)
      return { personId, sessionSecret: await openSession(tx, { bakeryId, personId }, 'test', now) }
    })
    return { personId, name: who, email, password, sessionSecret, caller: callerOf(sessionSecret, now, password) }
  }
  return {
    bakeryId,
    name,
    owner: await makePerson('Olga', 'owner'),
    head: await makePerson('Henk', 'head_baker'),
    early: await makePerson('Esi', 'shift_baker'),
    late: await makePerson('Lars', 'shift_baker'),
  }
}

/** The value of a result that must be good, or a failure that shows why it is not. */
export function valueOf<Value>(result: Result<Value>): Value {
  if (!result.ok)
    throw new Error(
      `refused: ${result.refusal.code} ${JSON.stringify(result.refusal.problems)} ${JSON.stringify(result.refusal.facts)}`,
    )
  return result.value
}

/** The code of a result that must be a refusal, with the faults at fields behind it: `invalid email:email-taken`. */
export function refusalOf(result: Result<unknown>): string {
  if (result.ok) throw new Error(`not refused: ${JSON.stringify(result.value)}`)
  const { code, problems } = result.refusal
  return [code, ...problems.map((problem) => `${problem.path}:${problem.code}`)].join(' ')
}

/** A first-run link of an install without a bakery. */
export async function makeFirstRunLink(now: Date = testNow): Promise<string> {
  const secret = makeSecret()
  await db().install.create({
    data: {
      id: 1,
      epoch: randomUUID(),
      kind: 'real',
      createdAt: now,
      firstRunHash: hashSecret('first-run', secret),
      firstRunEndsAt: new Date(now.getTime() + 24 * 60 * 60_000),
    },
  })
  return secret
}
