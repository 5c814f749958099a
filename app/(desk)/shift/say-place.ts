import { say } from '@/lib/words/say'
import type { Said } from '@/lib/words/text'
import type { Language, Words } from '@/lib/words/words'

/** Of which piece a reading is, and of which level where the trial has a factor; or of the whole batch. */
export function sayPlace(
  { piece, factorLevel }: { piece: number | null; factorLevel: string | null },
  words: Words['shift']['readings'],
  language: Language,
): Said {
  if (piece === null) return say(words.batch, language)
  return factorLevel === null
    ? say(words.piece, language, { piece })
    : say(words.pieceLevel, language, { piece, level: factorLevel })
}
