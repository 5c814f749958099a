import 'server-only'
import type { Db } from '../../db/client'

/**
 * A word for the book as it runs now: its epoch, and how often it was started. A tablet that hears another one asks
 * whether all that it was told is in the book still is.
 */
export async function bookAsOf(db: Db): Promise<string> {
  const [install, { _sum }] = await Promise.all([
    db.install.findUnique({ where: { id: 1 }, select: { epoch: true } }),
    db.startMark.aggregate({ _sum: { starts: true } }),
  ])
  return `${install?.epoch ?? ''}.${_sum.starts ?? 0}`
}
