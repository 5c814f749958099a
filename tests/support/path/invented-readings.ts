/** What the shift bakers of the path test read: invented, typed in by the test and worked out again by it. */
export const pieces = 2

export type PieceRead = { doughG: number; loafG: number; volumesMl: readonly [number, number] }
export type BatchRead = { waterG: number; doughTempC: number; proofMin: number; pieces: readonly PieceRead[] }

/** Batch and loaf differences in mL/g, as a row of numbers that a spread might give. */
const wobble = [0.06, -0.04, 0.02, -0.07, 0.05, -0.01, -0.05, 0.04, 0.03, -0.03, 0.07, -0.06, 0.01, -0.02, 0.04, 0]

/**
 * The readings of one batch.
 * @param arm 0 the control, 1 the dough with honey, which gives 0.6 mL/g more
 * @param day from 1 to 4; each day's doughs are 0.1 mL/g larger than those of the day before
 */
export function readingsOf(arm: number, day: number): BatchRead {
  const nth = day - 1
  const at = arm * 8 + nth * 2
  const ofPiece = (piece: number): PieceRead => {
    const loafG = 690 + 2 * wobble.length - at + piece
    const specificVolume = 4 + 0.6 * arm + 0.1 * nth + (wobble[at + piece] ?? 0)
    const volumeMl = 5 * Math.round((loafG * specificVolume) / 5)
    return { doughG: 800 + piece, loafG, volumesMl: [volumeMl, volumeMl + 10] }
  }
  // Close to what is planned: 597 g in the control, and 9 g less where honey brings some.
  return {
    waterG: 597 - 9 * arm + nth,
    doughTempC: 26 + 0.1 * nth,
    proofMin: 50 + nth,
    pieces: [ofPiece(0), ofPiece(1)],
  }
}
