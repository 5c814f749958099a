import 'server-only'
import type { Tx } from '../../db/client'
import type { Json } from '../../documents/canonical-text'
import { readReading } from '../../documents/reading/read-reading'
import type { AmendmentContent } from '../../documents/amendment/text-of-amendment'
import type { AsideRow } from '../intake/keep-aside'
import { enteredValue } from '../readings/entered-value'
import { mustBePlace } from '../readings/must-be-place'
import { levelOfPiece } from '../readings/rules'
import { Refusal } from '../refusal'
import type { TrialContent } from '../results/content-of-trial'
import { closedForAmending } from './closed-for-amending'
import { keepProposal } from './keep-proposal'
import { oldOf, readingAtPlace, readingFor } from './reading-at-place'

type Closing = Awaited<ReturnType<typeof closedForAmending>>['closing']
type OfReading = Extract<AmendmentContent['change'], { kind: 'reading' }>

/**
 * Makes proposed amendments of entries that came to a trial whose readings are closed: what a device took before and
 * sent after. They stand in the order of the device that sent them, and between devices in that of their receipt. One
 * that cannot be read as a reading of what was closed stays aside without one, and the result counts it.
 * @returns what the record notes of each
 */
export async function proposeLateEntries(q: {
  tx: Tx
  actor: { bakeryId: string; name: string }
  now: Date
  rows: readonly AsideRow[]
}): Promise<Json[]> {
  const { tx, actor, now } = q
  const rows = q.rows.filter(({ why }) => why === 'trial_closed')
  const noted: Json[] = []
  for (const trialId of [...new Set(rows.map((row) => row.trialId))].sort()) {
    const closed = await closedForAmending(tx, actor.bakeryId, trialId).catch(nullWhereRefused)
    if (!closed) continue
    const before = new Map(
      closed.amendments.all.flatMap(({ entry, change }) =>
        entry && change.kind === 'reading' ? [[entry.id, change] as const] : [],
      ),
    )
    for (const row of rows.filter((each) => each.trialId === trialId)) {
      const change = changeOf(row, closed.closing, before)
      if (!change) continue
      before.set(row.entryId, change.of)
      const proposal = await keepProposal(tx, {
        bakeryId: actor.bakeryId,
        trialId,
        closing: closed.hash,
        change: change.of,
        reason: change.reason,
        by: { id: row.sentById, name: actor.name },
        at: now,
        entry: { id: row.entryId, hash: row.hash },
      })
      noted.push({ ...proposal, trial: trialId })
    }
  }
  return noted
}

/** What an entry says should stand, and why where it corrects; null for what cannot be read as a reading of the trial. */
function changeOf(
  row: AsideRow,
  closing: Closing,
  before: ReadonlyMap<string, OfReading>,
): { of: OfReading; reason: string | null } | null {
  const read = readReading(row.text, row.hash)
  if (read.outcome !== 'read') return null
  const { supersedes, takenAt, piece, repeat, value, unit, reason } = read.reading
  const wrong = supersedes === null ? null : wrongOf(supersedes.toLowerCase(), closing, before)
  const dough = closing.doughs.find(({ id }) => id === row.batchId)
  const measureId = read.reading.measure?.toLowerCase() ?? wrong?.measure
  const measure = closing.measures.find(({ id }) => id === measureId)
  if (!dough || !measure) return null
  const { factor, piecesPerBatch } = closing.declared
  const levels = factor?.levels ?? []
  const factorLevel = piece === null ? null : levelOfPiece(piece, levels)
  try {
    mustBePlace({ piece, factorLevel }, measure, {
      piecesPerBatch,
      factorName: factor?.name ?? null,
      factorLevels: levels,
    })
    const entered = enteredValue({ value, unit }, measure)
    const there = readingAtPlace(closing, { dough: dough.id, measure: measure.id, piece, factorLevel, repeat })
    // It moves to a place that another reading has.
    if (there && wrong?.closed && there.id !== wrong.closed.id) return null
    const { id, code, name } = measure
    return {
      of: {
        kind: 'reading',
        dough: { id: dough.id, code: dough.code },
        measure: { id, code, name, unit: measure.unit },
        piece,
        factorLevel,
        repeat,
        old: oldOf(there ?? wrong?.closed ?? null),
        new: { value: entered, valueEntered: value, unitEntered: unit },
        takenAt: takenAt ?? wrong?.takenAt ?? null,
      },
      reason,
    }
  } catch (error) {
    return nullWhereRefused(error)
  }
}

/** What a correction is of: a reading that was closed, or an entry that came late before it. */
function wrongOf(
  id: string,
  closing: TrialContent,
  before: ReadonlyMap<string, OfReading>,
): { measure: string; takenAt: string | null; closed: TrialContent['readings'][number] | null } | null {
  const closed = readingFor(closing, id)
  if (closed) return { measure: closed.measure, takenAt: closed.takenAt, closed }
  const late = before.get(id)
  return late ? { measure: late.measure.id, takenAt: late.takenAt, closed: null } : null
}

/** What is expected not to be possible is null; anything else is a fault of ours. */
function nullWhereRefused(error: unknown): null {
  if (error instanceof Refusal) return null
  throw error
}
