import 'server-only'
import type { Still } from '../db/append-audit'
import type { Actor } from './actor'

/** What must still be true of somebody who was found, for the record to take an entry of theirs. */
export function stillOf(actor: Actor): Still {
  switch (actor.kind) {
    case 'desk':
      return { kind: 'desk', sessionId: actor.sessionId, personId: actor.personId, role: actor.role }
    case 'job':
      return { kind: 'job' }
    case 'station':
      return actor.personId === null
        ? { kind: 'station', stationId: actor.stationId, personId: null }
        : {
            kind: 'station',
            stationId: actor.stationId,
            shiftId: actor.shiftId,
            personId: actor.personId,
            role: actor.role,
          }
    case 'taster':
      return { kind: 'nobody' }
    default:
      actor satisfies never
      return { kind: 'nobody' }
  }
}
