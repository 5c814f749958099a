import 'server-only'
import type { MeasureLevel } from '../../db/generated/enums'
import { Refusal } from '../refusal'
import { levelOfPiece } from './rules'

/**
 * Refuses a reading that is not of a thing of this trial: a measure of pieces names a piece that the trial reads, and
 * the level that the piece is of where the trial has a factor within batches; a measure of the batch names neither.
 * Refuses at `piece`: missing, not-of-a-piece, too-big; at `factorLevel`: missing, wrong-choice, not-its-level, no-factor.
 */
export function mustBePlace(
  place: { piece: number | null; factorLevel: string | null },
  measure: { level: MeasureLevel },
  trial: { piecesPerBatch: number; factorName: string | null; factorLevels: readonly string[] },
): void {
  if (measure.level === 'batch') {
    if (place.piece !== null) throw Refusal.at('piece', 'not-of-a-piece')
    if (place.factorLevel !== null) throw Refusal.at('factorLevel', 'no-factor')
    return
  }
  if (place.piece === null) throw Refusal.at('piece', 'missing')
  if (place.piece > trial.piecesPerBatch) throw Refusal.at('piece', 'too-big', { max: trial.piecesPerBatch })
  if (trial.factorName === null) {
    if (place.factorLevel !== null) throw Refusal.at('factorLevel', 'no-factor')
    return
  }
  if (place.factorLevel === null) throw Refusal.at('factorLevel', 'missing')
  if (!trial.factorLevels.includes(place.factorLevel)) throw Refusal.at('factorLevel', 'wrong-choice')
  const level = levelOfPiece(place.piece, trial.factorLevels)
  if (place.factorLevel !== level) throw Refusal.at('factorLevel', 'not-its-level', { level: level ?? '' })
}
