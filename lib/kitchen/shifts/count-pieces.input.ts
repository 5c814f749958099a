import { z } from 'zod'
import { seenRevision } from '../text.input'

const pieces = z.int().min(0).max(10_000)

export const countPiecesInput = z
  .strictObject({ batchId: z.uuid(), seenRevision, piecesMade: pieces, piecesGood: pieces })
  .refine(({ piecesMade, piecesGood }) => piecesGood <= piecesMade, {
    path: ['piecesGood'],
    params: { code: 'more-than-made' },
  })
