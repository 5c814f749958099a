import 'server-only'
import { z } from 'zod'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'

/** Each may be long. */
const notesOnPage = 20

/**
 * Notes, the latest first, a page at a time: those of one dough, or all there are. Everybody here reads all of them, so
 * nothing is told that is not written in them. Of a dough that is not there, there are none.
 */
export const listNotes = query({
  name: 'notes.list-notes',
  input: z.strictObject({ batchId: z.uuid().nullable(), after }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId, personId }, input }) {
    const { batchId } = input
    const where = { bakeryId, ...(batchId === null ? {} : { batchId }) }
    const page = await readPage({
      bakeryId,
      list: batchId === null ? 'notes' : `notes.${batchId}`,
      after: input.after,
      count: () => db.note.count({ where }),
      length: notesOnPage,
      key: z.tuple([keyParts.time, keyParts.id]),
      read: (beyond, take) =>
        db.note.findMany({
          where: { ...where, ...(beyond && beyondInOrder(beyond)) },
          select: {
            id: true,
            text: true,
            forNext: true,
            takenAt: true,
            receivedAt: true,
            personId: true,
            person: { select: { name: true } },
            batch: { select: { id: true, code: true } },
            trial: { select: { number: true } },
            readers: { select: { person: { select: { name: true } } }, orderBy: [{ at: 'asc' }, { personId: 'asc' }] },
          },
          orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }],
          take,
        }),
      keyOf: ({ receivedAt, id }) => [receivedAt.toISOString(), id],
    })
    return {
      ...page,
      rows: page.rows.map(({ person, personId: writerId, trial, readers, ...note }) => ({
        ...note,
        who: person.name,
        isOwn: writerId === personId,
        trialNumber: trial?.number ?? null,
        readBy: readers.map((reader) => reader.person.name),
      })),
    }
  },
})

/** Received before, or at the same moment under an id that was made before. */
function beyondInOrder([receivedAt, id]: readonly [Date, string]) {
  return { OR: [{ receivedAt: { lt: receivedAt } }, { receivedAt, id: { lt: id } }] }
}
