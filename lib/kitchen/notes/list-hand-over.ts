import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { handOver } from './hand-over'

/** What the shift before left for this one, until somebody says that they have read it. It is the same for everybody. */
export const listHandOver = query({
  name: 'notes.list-hand-over',
  input: z.strictObject({}),
  right: 'read-shift',
  async run({ db, actor, now }) {
    const notes = await handOver(db, actor.bakeryId, now)
    return { notes: notes.map(({ personId, ...note }) => ({ ...note, isOwn: personId === actor.personId })) }
  },
})
