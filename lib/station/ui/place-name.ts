import { sayName } from '../../words/say'
import { station as words } from '../../words/en/station'

/** What a place is called, by its piece, the level that the piece is of, and which reading of it is meant. */
export function placeName(q: { piece: number | null; level: string | null; repeat: number }): string {
  const { piece, level, repeat } = q
  const { place } = words
  if (piece === null) return repeat === 1 ? place.whole : sayName(place.wholeAgain, 'en', { repeat })
  if (level === null)
    return repeat === 1 ? sayName(place.piece, 'en', { piece }) : sayName(place.pieceAgain, 'en', { piece, repeat })
  return repeat === 1
    ? sayName(place.pieceLevel, 'en', { piece, level })
    : sayName(place.pieceLevelAgain, 'en', { piece, level, repeat })
}
