import 'server-only'
import type { Db } from '../../db/client'

/** Older ones stand among the notes, and no longer at the top of a shift. */
const handOverMs = 24 * 60 * 60_000
/** Nobody reads more at the beginning of a shift. */
const most = 20

/** What was left for the next shift within the last day and that nobody else has read yet, the oldest first. */
export async function handOver(db: Db, bakeryId: string, now: Date) {
  const rows = await db.note.findMany({
    where: {
      bakeryId,
      forNext: true,
      receivedAt: { gt: new Date(now.getTime() - handOverMs) },
      readers: { none: {} },
    },
    select: {
      id: true,
      text: true,
      takenAt: true,
      receivedAt: true,
      personId: true,
      person: { select: { name: true } },
      batch: { select: { id: true, code: true } },
      trial: { select: { number: true } },
    },
    orderBy: [{ receivedAt: 'desc' }, { id: 'desc' }],
    take: most,
  })
  return rows
    .reverse()
    .map(({ person, trial, ...row }) => ({ ...row, who: person.name, trialNumber: trial?.number ?? null }))
}
