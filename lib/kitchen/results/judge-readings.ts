import 'server-only'
import type { Db, Tx } from '../../db/client'
import { readClosing } from '../../documents/closing/read-closing'
import type { Closing } from '../../documents/closing/closing'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { keepLast } from '../heavy/keep-last'
import { contentOfTrial } from './content-of-trial'
import { judgeContent, type JudgedContent } from './judge-content'

type Trial = { id: string; measure: Parameters<typeof judgeContent>[1]['measure']; piecesPerBatch: number }

/** The readings of so many open trials are kept as judged, those that were looked at last. */
const keptOpen = keepLast<JudgedContent>(50)
/** And so many closed ones. */
const keptClosed = keepLast<ClosedContent>(100)

export type ClosedContent =
  | { outcome: 'read'; closing: Closing; judged: JudgedContent }
  | { outcome: 'damaged' }
  | { outcome: 'unknown-format'; format: number }

/**
 * What was read of an open trial, or of one that ended before readings were sealed, read and judged once for the same
 * rows.
 * @param seal of the rows, read before
 * @param rests what it rests on beside the rows: measures and what is kept aside
 */
export function judgeRows(
  from: Db | Tx,
  q: { bakeryId: string; seal: string; trial: Trial; rests: unknown },
): Promise<JudgedContent> {
  const { id, measure, piecesPerBatch } = q.trial
  return keptOpen(hashOfFacts([q.bakeryId, q.seal, id, measure.id, measure.level, piecesPerBatch, q.rests]), async () =>
    judgeContent(await contentOfTrial(from, q.bakeryId, id), q.trial),
  )
}

/** What was closed of a trial, read and judged once for its hash. */
export function judgeClosing(
  from: Db | Tx,
  q: { bakeryId: string; trialId: string; hash: string },
): Promise<ClosedContent> {
  return keptClosed(hashOfFacts([q.bakeryId, q.trialId, q.hash]), async () => {
    const { text } = await from.closing.findUniqueOrThrow({
      where: { bakeryId_trialId: { bakeryId: q.bakeryId, trialId: q.trialId } },
      select: { text: true },
    })
    const read = readClosing(text, q.hash)
    if (read.outcome !== 'read') return read
    const { closing } = read
    return { outcome: 'read', closing, judged: judgeContent(closing, closing.declared) }
  })
}

export type Seals = {
  /** One hash over the values of all doughs and readings that the trial has at this moment. */
  rowsNow: string
  /** What was kept when its readings were closed; null while they are open. */
  closed: { hash: string; rowsSeal: string; isItsText: boolean } | null
}

/** The seals of a trial: of its rows now, and of what was closed, whose text is held against its hash at every look. */
export async function sealsOf(from: Db | Tx, bakeryId: string, trialId: string): Promise<Seals> {
  const [row] = await from.$queryRaw<
    { rowsNow: string; hash: string | null; rowsSeal: string | null; textHash: string | null }[]
  >`
    SELECT seal_of_rows(asked.bakery, asked.trial) AS "rowsNow", closing.hash, closing.rows_seal AS "rowsSeal",
      encode(sha256(convert_to(closing.text, 'UTF8')), 'hex') AS "textHash"
    FROM (SELECT ${bakeryId}::uuid AS bakery, ${trialId}::uuid AS trial) AS asked
    LEFT JOIN closing ON closing.bakery_id = asked.bakery AND closing.trial_id = asked.trial`
  const { rowsNow = '', hash = null, rowsSeal = null, textHash = null } = row ?? {}
  return {
    rowsNow,
    closed: hash === null || rowsSeal === null ? null : { hash, rowsSeal, isItsText: textHash === hash },
  }
}
