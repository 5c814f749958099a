import 'server-only'
import { z } from 'zod'
import type { Db } from '../../db/client'
import { anchorsFile } from '../../db/settings'
import { log } from '../../db/log'
import { query } from '../query'
import type { Anchor } from './anchor-line'
import { readAnchors } from './anchors-file'

/** Anchors compared at once. */
const pieceLength = 1000

type Found =
  /** The install keeps no such file, or cannot read it. */
  | { outcome: 'not-kept' | 'not-readable' | 'none' }
  | { outcome: 'agree'; count: number; first: Date; last: Date }
  /** The first that disagrees: another entry stands there, or none. */
  | { outcome: 'differs' | 'not-there'; number: number; at: Date }

/**
 * Holds the bakery's record against the file of anchors outside the database: the first line that disagrees, or
 * that all agree, and the first line of the file that says nothing, which may be any bakery's. Read in pieces.
 */
export const compareAnchors = query({
  name: 'audit.compare-anchors',
  input: z.strictObject({}),
  right: 'read-record',
  async run({ db, actor: { bakeryId } }) {
    const file = anchorsFile()
    let unreadableLine: number | null = null
    const answer = (found: Found) => ({ ...found, unreadableLine })
    if (file === null) return answer({ outcome: 'not-kept' })
    const own: Anchor[] = []
    try {
      for await (const { line, anchor } of readAnchors(file)) {
        if (anchor === null) unreadableLine ??= line
        else if (anchor.bakery === bakeryId) own.push(anchor)
      }
    } catch (error) {
      log.error({ event: 'anchors-not-read', error })
      return answer({ outcome: 'not-readable' })
    }
    const [first, last] = [own[0], own.at(-1)]
    if (!first || !last) return answer({ outcome: 'none' })
    for (let from = 0; from < own.length; from += pieceLength) {
      const wrong = await firstThatDisagrees(db, bakeryId, own.slice(from, from + pieceLength))
      if (wrong) return answer(wrong)
    }
    return answer({ outcome: 'agree', count: own.length, first: new Date(first.at), last: new Date(last.at) })
  },
})

async function firstThatDisagrees(db: Db, bakeryId: string, anchors: readonly Anchor[]): Promise<Found | null> {
  const entries = await db.auditEntry.findMany({
    where: { bakeryId, number: { in: anchors.map(({ number }) => BigInt(number)) } },
    select: { number: true, hash: true },
  })
  const hashes = new Map(entries.map(({ number, hash }) => [Number(number), hash]))
  for (const { number, hash, at } of anchors) {
    const standing = hashes.get(number)
    if (standing !== hash)
      return { outcome: standing === undefined ? 'not-there' : 'differs', number, at: new Date(at) }
  }
  return null
}
