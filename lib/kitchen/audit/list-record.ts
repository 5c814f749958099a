import 'server-only'
import { z } from 'zod'
import { query } from '../query'

const pageLength = 50

const entryText = z.object({
  who: z.object({ name: z.string(), role: z.string() }).nullable(),
  action: z.string(),
  before: z.json(),
  after: z.json(),
  reason: z.string().nullable(),
})

/** The bakery's record, newest first, a page at a time from before a number. */
export const listRecord = query({
  name: 'audit.list-record',
  input: z.strictObject({ before: z.int().min(1).max(Number.MAX_SAFE_INTEGER).optional() }),
  right: 'read-record',
  async run({ db, actor, input }) {
    const rows = await db.auditEntry.findMany({
      where: { bakeryId: actor.bakeryId, ...(input.before && { number: { lt: input.before } }) },
      select: { number: true, at: true, entryText: true },
      orderBy: { number: 'desc' },
      take: pageLength + 1,
    })
    const shown = rows.slice(0, pageLength)
    return {
      entries: shown.map(({ number, at, entryText: text }) => ({ number: Number(number), at, ...entryText.parse(JSON.parse(text)) })),
      olderBefore: rows.length > pageLength ? Number(shown.at(-1)?.number) : null,
    }
  },
})
