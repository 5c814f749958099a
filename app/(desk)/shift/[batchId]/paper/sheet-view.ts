import type { AnswerOf } from '@/lib/kitchen/query'
import type { getSheet } from '@/lib/kitchen/readings/paper/get-sheet'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Said } from '@/lib/words/text'
import type { Language, Words } from '@/lib/words/words'
import { sayPlace } from '../../say-place'

export type SheetShown = AnswerOf<typeof getSheet>
export type SheetMeasure = SheetShown['measures'][number]
export type SheetPart = { sheet: SheetShown; words: Words; language: Language }

/** A measure with the unit in which it is written. */
export function nameInUnit(measure: SheetMeasure, words: Words, language: Language): Said {
  return say(words.paper.inUnit, language, { name: measureName(measure, words), unit: measure.unit })
}

/** Of which piece a place is, and which reading of several. */
export function namePlace(
  place: SheetMeasure['places'][number],
  { places }: SheetMeasure,
  words: Words,
  language: Language,
): Said {
  const { piece, factorLevel: level, repeat } = place
  if (places.filter((each) => each.piece === piece).length < 2) return sayPlace(place, words.shift.readings, language)
  if (piece === null) return say(words.paper.again, language, { repeat })
  return level === null
    ? say(words.paper.againOfPiece, language, { piece, repeat })
    : say(words.paper.againOfLevel, language, { piece, level, repeat })
}
