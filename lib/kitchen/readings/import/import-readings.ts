import 'server-only'
import type { Tx } from '../../../db/client'
import { command } from '../../command'
import { Refusal } from '../../refusal'
import { mixedBatches } from '../../batches/mixed-batches'
import { mustBeOpen } from '../../trials/must-be-open'
import { staleRefusal } from '../../stale'
import { lockTrial } from '../../trials/lock-trial'
import { examineImport } from './examine-import'
import { hashOfContent } from '../hash-of-content'
import { importReadingsInput } from './import-readings.input'
import { keepReadings } from '../keep-readings'
import { loadImportFacts } from './load-import-facts'
import type { OutsideMove } from '../outside-moves'

/**
 * Stores the readings of a file, all or none. The file is read anew from its bytes; ids are made from trial and place,
 * so a file that comes twice is answered 'there already' and stored once. Doughs that were baked outside the shift are
 * moved on to measured, or to baked while readings are to come.
 * Refuses: not-found, rows-at-fault (problems at `lines.<line>.<column>`), trial-not-approved, trial-closed,
 * trial-stopped, stale; faults of the file or of how it is matched, at their fields.
 */
export const importReadings = command({
  name: 'readings.import-readings',
  input: importReadingsInput,
  right: 'import-readings',
  async run({ tx, actor, now, input: { trialId, ...look } }) {
    const { bakeryId } = actor
    // Alone: whoever logs a reading or moves a batch of this trial waits.
    await lockTrial(tx, bakeryId, trialId)
    const facts = await loadImportFacts(tx, bakeryId, trialId, actor.personId)
    const { file, table, problems, rows } = examineImport({
      facts,
      mixed: await mixedBatches(tx, bakeryId, trialId),
      look,
      now,
    })
    if (!table || !rows || problems.length > 0) throw new Refusal('invalid', {}, problems)
    if (rows.faults.length > 0) {
      throw new Refusal(
        'rows-at-fault',
        { count: rows.faults.length },
        rows.faults.map(({ line, column, code, facts: about }) => ({
          path: `lines.${line}.${column ?? ''}`,
          code,
          facts: about,
        })),
      )
    }
    const moves = rows.outside?.moves ?? []
    const { fresh, already } = rows
    const value = { stored: fresh.length, already, measured: moves.filter(({ to }) => to === 'measured').length }
    const ofFile = { file: file.name, sha256: file.sha256, rows: table.rows.length }
    if (fresh.length === 0 && moves.length === 0)
      return { value, audit: { target: trialId, after: { ...ofFile, stored: 'nothing, all of it is there already' } } }

    mustBeOpen(facts.trial.state)
    await keepReadings(
      tx,
      fresh.map(
        ({
          id,
          batchId,
          measureId,
          piece,
          factorLevel,
          repeat,
          valueEntered,
          unitEntered,
          value: inBase,
          range,
          takenAt,
        }) => ({
          bakeryId,
          id,
          trialId,
          batchId,
          measureId,
          piece,
          factorLevel,
          repeat,
          value: inBase,
          valueEntered,
          unitEntered,
          personId: actor.personId,
          takenAt,
          receivedAt: now,
          supersedesId: null,
          reason: null,
          contentHash: hashOfContent({
            id,
            batchId,
            measureId,
            piece,
            factorLevel,
            repeat,
            value: valueEntered,
            unit: unitEntered,
            takenAt: takenAt.toISOString(),
          }),
          plausibleLeast: range.least,
          plausibleMost: range.most,
        }),
      ),
    )
    for (const move of moves) if (!(await moveOn(tx, bakeryId, move))) throw await staleRefusal(tx, actor, move.batchId)
    const begins =
      moves.length > 0
        ? (
            await tx.trial.updateMany({
              where: { bakeryId, id: trialId, state: 'approved' },
              data: { state: 'baking', revision: { increment: 1 } },
            })
          ).count
        : 0
    return {
      value,
      audit: {
        target: trialId,
        after: {
          ...ofFile,
          stored: fresh.length,
          already,
          ...(rows.odd.length > 0
            ? { outsideAndConfirmed: rows.odd.map(({ line, value: odd }) => `line ${line}: ${odd}`) }
            : {}),
          ...(look.outside
            ? {
                outsideTheShift: moves.map(({ code, to }) => `${code} ${to}`),
                cleanDown: rows.outside?.cleanDown ?? [],
                trialBegins: begins === 1,
              }
            : {}),
        },
        reason: rows.outside?.skipped ? look.outside?.orderWhy : undefined,
      },
    }
  },
})

async function moveOn(
  tx: Tx,
  bakeryId: string,
  { batchId, revision, from, to, begunAt, doneAt, piecesMade, piecesGood }: OutsideMove,
): Promise<boolean> {
  const { count } = await tx.batch.updateMany({
    where: { bakeryId, id: batchId, state: from, revision },
    data: { state: to, begunAt, doneAt, piecesMade, piecesGood, revision: { increment: 1 } },
  })
  return count === 1
}
