import { describe, expect, expectTypeOf, it } from 'vitest'
import type { DeskActor, JobActor, StationOnShift, TasterActor } from '@/lib/auth/actor'
import { levelOf, mayTry, rights, type ActorOf, type Party, type Right } from '@/lib/auth/rights'
import { actorOf, levelByHand, parties, whoMay } from '@/tests/support/who-may'

const everyRight = Object.keys(whoMay) as Right[]

describe('who may do what', () => {
  it('knows every right of the table and no other', () => {
    expect(Object.keys(rights).sort()).toEqual([...everyRight].sort())
  })

  for (const right of everyRight) {
    it.each(parties)(`${right}: %s`, (party) => {
      expect(levelOf(actorOf(party), right)).toBe(levelByHand(party, right))
      expect(mayTry(actorOf(party), right)).toBe(levelByHand(party, right) !== 'no')
    })
  }

  // Names that every object has are no rights, kinds, roles or jobs either.
  const forged = ['', 'everything', 'DESK', 'constructor', '__proto__', 'toString', 'hasOwnProperty']

  it.each(forged)('nobody may anything by a right %j, which is not known', (right) => {
    for (const party of parties) expect(levelOf(actorOf(party), right as Right)).toBe('no')
  })

  it.each([...forged, undefined, null, 1, {}, ['desk']])('a kind %j, which is not known, may nothing', (kind) => {
    for (const party of parties)
      for (const right of everyRight) expect(mayTry({ ...actorOf(party), kind } as never, right)).toBe(false)
  })

  it.each([...forged, undefined, null, 'nobody', 'alone'])(
    'a role or a job %j, which is not known, may nothing',
    (name) => {
      for (const right of everyRight) {
        for (const kind of ['desk', 'station'] as const)
          expect(levelOf({ kind, role: name } as Party, right)).toBe('no')
        expect(levelOf({ kind: 'job', job: name } as Party, right)).toBe('no')
      }
    },
  )

  it('does not let a kind in by what another kind has', () => {
    for (const right of everyRight) {
      expect(levelOf({ kind: 'taster', role: 'owner', personId: 'p' } as Party, right)).toBe(
        levelByHand('taster', right),
      )
      expect(levelOf({ kind: 'job', job: 'owner-link', role: 'owner' } as Party, right)).toBe(
        levelByHand('job owner-link', right),
      )
    }
  })
})

describe('the work behind a right', () => {
  it('gets an actor of a kind that the table lets in, and needs no further question', () => {
    expectTypeOf<ActorOf<'approve-plan'>>().toEqualTypeOf<DeskActor>()
    expectTypeOf<ActorOf<'log-reading'>>().toEqualTypeOf<DeskActor | StationOnShift>()
    expectTypeOf<ActorOf<'taste'>>().toEqualTypeOf<DeskActor | StationOnShift | TasterActor>()
    expectTypeOf<ActorOf<'make-owner-link'>>().toEqualTypeOf<JobActor>()
    expectTypeOf<ActorOf<'log-reading'>['personId']>().toEqualTypeOf<string>()
  })
})
