import { v7 as uuid } from 'uuid'
import { expect, it } from 'vitest'
import type { DeskActor } from '@/lib/auth/actor'
import { rights } from '@/lib/auth/rights'
import type { Tx } from '@/lib/db/client'
import type { Role } from '@/lib/db/generated/enums'
import { entryHandlers } from '@/lib/kitchen/intake/handlers'
import { testNow } from '../../../support/bakery'

/** A transaction that must not be used. */
const untouched = new Proxy(
  {},
  {
    get: () => {
      throw new Error('the database was asked')
    },
  },
) as Tx
const actorOf = (role: string): DeskActor => ({
  kind: 'desk',
  language: null,
  bakeryId: uuid(),
  personId: uuid(),
  name: 'Nobody',
  email: 'nobody@mill-row.example',
  role: role as Role,
  sessionId: uuid(),
  sessionSeenAt: testNow,
})
const kinds = entryHandlers.flatMap((handler) =>
  Object.entries(handler.kinds).map(([kind, each]) => ({ handler, kind, ...each })),
)

it('each kind has one handler, and asks for a right that there is', () => {
  expect(new Set(kinds.map(({ kind }) => kind)).size).toBe(kinds.length)
  expect(kinds.filter(({ right }) => !(right in rights))).toEqual([])
  // The sender's own id is what makes sending twice safe.
  expect(kinds.filter(({ input }) => !('id' in input.shape))).toEqual([])
})

it.each(kinds)('$kind is refused to whoever has not its right, before anything is read', async ({ handler, kind }) => {
  const id = uuid()
  const taken = await handler.take({
    tx: untouched,
    actor: actorOf('guest'),
    now: testNow,
    needsWayBack: false,
    entries: [{ kind, id }, { kind }],
  })
  expect(taken).toMatchObject([
    { outcome: 'refused', id, refusal: { code: 'not-allowed' } },
    { outcome: 'refused', id: null, refusal: { code: 'not-allowed' } },
  ])
})
