import 'server-only'
import { query } from '../query'
import { entryHandlers } from './handlers'
import { listLackingInput } from './list-lacking.input'

/**
 * Which of the entries that a tablet was told are in the book are not there as it was told, kept or aside: after the
 * database was put back from a copy they are sent once more. Only that is said, by their ids and hashes.
 */
export const listLacking = query({
  name: 'intake.list-lacking',
  input: listLackingInput,
  right: 'hold-station',
  async run({ db, actor: { bakeryId }, input: { entries } }) {
    const ids = entries.map(({ id }) => id.toLowerCase())
    const [aside, ...kept] = await Promise.all([
      db.entryToSettle.findMany({ where: { bakeryId, entryId: { in: ids } }, select: { entryId: true, hash: true } }),
      ...entryHandlers.map((handler) => handler.held(db, bakeryId, ids)),
    ])
    const held = {
      aside: new Set(aside.map(({ entryId, hash }) => `${entryId} ${hash}`)),
      kept: new Set(kept.flat().map(({ id, contentHash }) => `${id} ${contentHash}`)),
    }
    return {
      lacking: entries.flatMap(({ id, hash, outcome }) => {
        const key = `${id.toLowerCase()} ${hash}`
        const isThere = outcome ? held[outcome].has(key) : held.aside.has(key) || held.kept.has(key)
        return isThere ? [] : [id]
      }),
    }
  },
})
