import 'server-only'
import { z } from 'zod'
import { dayOfDate } from '../day-of-date'
import { query } from '../query'
import { piecesToRead } from '../readings/pieces-to-read'
import { levelOfPiece } from '../readings/rules'
import { Refusal } from '../refusal'
import { cautionsOfDough, ingredientForCautions } from '../trials/cautions-of-dough'
import { isFrozen } from '../trials/rules'
import { qrCode } from './qr-code'
import { stationOrigin } from './station-origin'

/**
 * The slips of a dough's pieces, one for each that is read: its code and number, what can hurt somebody in it, and a code by
 * which a tablet opens its readings. What the dough is, is not on them.
 * Refuses: not-found.
 */
export const getSlips = query({
  name: 'stations.get-slips',
  input: z.strictObject({ batchId: z.uuid() }),
  right: 'read-shift',
  async run({ db, actor: { bakeryId }, input }) {
    const batch = await db.batch.findUnique({
      where: { bakeryId_id: { bakeryId, id: input.batchId } },
      select: {
        id: true,
        code: true,
        piecesMade: true,
        mixingDay: { select: { number: true, day: true } },
        arm: { select: { lines: { select: { ingredient: { select: ingredientForCautions } } } } },
        trial: {
          select: {
            number: true,
            state: true,
            piecesPerBatch: true,
            factorLevels: true,
            formula: { select: { name: true } },
          },
        },
      },
    })
    if (!batch || !isFrozen(batch.trial.state)) throw new Refusal('not-found')
    const { trial } = batch
    const origin = stationOrigin()
    return {
      id: batch.id,
      code: batch.code,
      trialNumber: trial.number,
      formulaName: trial.formula.name,
      dayNumber: batch.mixingDay.number,
      day: dayOfDate(batch.mixingDay.day),
      ...cautionsOfDough(batch.arm),
      /** Whether a camera finds anything: only where tablets reach this install. */
      isScanned: origin !== null,
      pieces: Array.from({ length: piecesToRead(trial.piecesPerBatch, batch.piecesMade) }, (_, at) => ({
        piece: at + 1,
        factorLevel: levelOfPiece(at + 1, trial.factorLevels),
        scan: origin === null ? null : qrCode(`${origin}/station#${batch.id}.${at + 1}`),
      })),
    }
  },
})
