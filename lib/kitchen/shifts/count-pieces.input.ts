import { z } from 'zod'
import { seenRevision } from '../text.input'
import { countFault, mostPieces } from './count-fault.input'
import { becameOfPieces } from './log-count.input'

const pieces = z.int().min(0).max(mostPieces)

export const countPiecesInput = z
  .strictObject({ batchId: z.uuid(), seenRevision, piecesMade: pieces, piecesGood: pieces, ...becameOfPieces })
  .refine(({ piecesMade, piecesGood }) => piecesGood <= piecesMade, {
    path: ['piecesGood'],
    params: { code: 'more-than-made' },
  })
  .refine(
    ({ piecesMade, piecesGood, ...became }) =>
      countFault({ made: piecesMade, good: piecesGood, ...became })?.at !== 'wasted',
    { path: ['wasted'], params: { code: 'more-gone' } },
  )
