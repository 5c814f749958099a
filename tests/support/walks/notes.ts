import { keepNote } from '../../../lib/kitchen/notes/keep-note'
import { makeApprovedTrial } from '../approved-trial'
import { callerOf, valueOf } from '../bakery'
import type { ActionWalk, PageWalk } from '../rights-walk'

const file = 'app/(desk)/shift/notes/actions.ts'

export const notesActions: readonly ActionWalk[] = [
  {
    action: `${file}#keep`,
    command: 'notes.keep-note',
    right: 'log-reading',
    async aim({ bakery, look }) {
      const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
      const batchId = batches[0]!.batchId
      return {
        page: `/shift/${batchId}`,
        bound: [batchId],
        fields: { text: 'Walked', forNext: 'on' },
        async happened() {
          const { rows } = await look.query<{ n: string }>(
            `SELECT count(*) n FROM note WHERE bakery_id = $1 AND batch_id = $2 AND text = 'Walked' AND for_next`,
            [bakery.bakeryId, batchId],
          )
          return Number(rows[0]?.n) === 1
        },
      }
    },
  },
  {
    action: `${file}#read`,
    command: 'notes.note-read',
    right: 'log-reading',
    async aim({ bakery, look }) {
      // By somebody whom the walk does not send, because nobody reads their own.
      const input = { batchId: null, text: 'Planted', forNext: true }
      const { noteId } = valueOf(await keepNote.call(callerOf(bakery.late.sessionSecret, new Date()), input))
      return {
        page: '/shift',
        bound: [noteId],
        fields: {},
        async happened() {
          const { rows } = await look.query<{ n: string }>(`SELECT count(*) n FROM note_reader WHERE note_id = $1`, [
            noteId,
          ])
          return Number(rows[0]?.n) === 1
        },
      }
    },
  },
]

export const notesPages: readonly PageWalk[] = [
  { route: '/shift/notes', queries: ['notes.list-notes'], right: 'read-shift', address: () => '/shift/notes' },
]
