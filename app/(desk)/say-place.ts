import 'server-only'
import { measureName } from '@/lib/words/measure-name'
import { sayName } from '@/lib/words/say'
import type { NamedMeasure } from '@/lib/words/standard-measure'
import type { Language, Words } from '@/lib/words/words'

/** What was read, and of what: the measure's name, and the piece or the whole batch. */
export function sayPlace(
  { measure, piece, factorLevel }: { measure: NamedMeasure; piece: number | null; factorLevel: string | null },
  words: Words,
  language: Language,
): { name: string; place: string } {
  const { readings } = words.shift
  const name = measureName(measure, words)
  if (piece === null) return { name, place: readings.batch }
  return {
    name,
    place:
      factorLevel === null
        ? sayName(readings.piece, language, { piece })
        : sayName(readings.pieceLevel, language, { piece, level: factorLevel }),
  }
}
