import 'server-only'
import { db } from '../../db/client'
import { anchorsFile } from '../../db/settings'
import type { Anchor } from '../audit/anchor-line'
import { appendAnchors, readAnchors } from '../audit/anchors-file'
import type { Job } from './job'

/** Bakeries read at once. */
const atOnce = 500

/**
 * Notes once a day, in a file outside the database, where the record of each bakery stands: whoever writes a record anew
 * with the database's password does not reach that. A bakery that has its line of the day gets no other.
 * @throws Error when the file cannot be written, or a line of it cannot be read: it was damaged
 */
export const anchorRecords: Job = {
  name: 'anchor-records',
  everyMs: 24 * 60 * 60_000,
  async run({ now, signal }) {
    const file = anchorsFile()
    if (file === null) return
    const at = now.toISOString()
    const noted = new Set<string>()
    let unreadable: number | null = null
    for await (const { line, anchor } of readAnchors(file)) {
      if (anchor === null) unreadable ??= line
      else if (dayOf(anchor.at) === dayOf(at)) noted.add(anchor.bakery)
    }
    for await (const heads of headsOfRecords()) {
      signal.throwIfAborted()
      await appendAnchors(
        file,
        heads.flatMap(({ bakeryId, number, hash }): Anchor[] =>
          noted.has(bakeryId) || number === 0n ? [] : [{ bakery: bakeryId, at, number: Number(number), hash }],
        ),
      )
    }
    if (unreadable !== null) throw new Error(`line ${unreadable} of the file of anchors cannot be read`)
  },
}

/** In UTC: the days of bakeries differ, and a day is only how often. */
function dayOf(at: string): string {
  return at.slice(0, 10)
}

async function* headsOfRecords() {
  for (let after: string | undefined; ; ) {
    const heads = await db().auditHead.findMany({
      where: after === undefined ? {} : { bakeryId: { gt: after } },
      select: { bakeryId: true, number: true, hash: true },
      orderBy: { bakeryId: 'asc' },
      take: atOnce,
    })
    yield heads
    after = heads.at(-1)?.bakeryId
    if (heads.length < atOnce) return
  }
}
