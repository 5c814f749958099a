import 'server-only'

/** How many pieces of a batch are to be read: as many as the trial asks for, fewer when fewer were made. */
export function piecesToRead(piecesPerBatch: number, piecesMade: number | null): number {
  return Math.min(piecesPerBatch, piecesMade ?? piecesPerBatch)
}
