import type { FieldRules } from '@/lib/ui/field-rules'
import type { Words } from '@/lib/words/words'

/** A reading that is in the book, as the page shows it. */
export type KeptReading = {
  id: string
  measureId: string
  piece: number | null
  factorLevel: string | null
  repeat: number
  valueEntered: string
  unitEntered: string
  /** That it is in the book, who took it and when, and why it was corrected: a sentence. */
  byline: string
  supersedesId: string | null
  /** The range that it is outside of, in words with its unit; null when it is within. */
  outside: { least: string; most: string } | null
  mayCorrect: boolean
}

export type MeasureToRead = {
  id: string
  name: string
  level: 'batch' | 'piece'
  method: string
  repeats: number
  /** In which units it may be typed here, the usual one first. */
  units: readonly string[]
  /** The plausible range in words, with its unit. */
  least: string
  most: string
  /** What the plan says of it, with its unit. */
  planned: string | null
  /** What to mind with it here; none most often. */
  mind: string | null
  /** When it falls due, where that goes by the age of the loaf. */
  due: string | null
  /** The trial asks for it; another one may be read and is never missing. */
  isWanted: boolean
}

export type Needs = 'repeat' | 'third' | null

/** One thing that is read: a measure of one piece, or of the whole batch. */
export type Place = { measureId: string; piece: number | null; factorLevel: string | null }

export function keyOfPlace({ measureId, piece, factorLevel }: Place): string {
  return `${measureId} ${piece ?? ''} ${factorLevel ?? ''}`
}

/** The id of the field in which a place is read. */
export function idOfField(place: Place): string {
  return `reading-${keyOfPlace(place).replaceAll(' ', '-')}`
}

/** What a place asks for still: a reading, because fewer are there than the measure wants, or a third one. */
export function asksForAt(kept: number, { repeats }: Pick<MeasureToRead, 'repeats'>, needs: Needs): Needs {
  return kept < repeats ? 'repeat' : needs
}

export type ReadingWords = Words['shift']['readings']

/** What the book asks of a reading that is taken, and of one that is corrected. */
export type ReadingRules = { take: FieldRules; correct: FieldRules }

/** What it takes to read one thing of a batch, and to correct what was read of it. */
export type ReadingPlaceProps = {
  batchId: string
  place: Place
  measure: MeasureToRead
  /** What it is of, in words: 'Piece 2'. */
  label: string
  /** What is in the book here and holds, by repeat. */
  kept: readonly KeptReading[]
  needs: Needs
  pieces: number
  /** What is in the book may still be corrected. */
  isOpen: boolean
  /** More may be put into the book. */
  mayKeep: boolean
  rules: ReadingRules
  words: ReadingWords
  language: string
  onKept(reading: KeptReading, needs: Needs): void
  /** The book said no: somebody else's reading may be in the place. */
  onRefused(): void
  onDraft(key: string, isUnsent: boolean): void
  /** That it is in the book, by whoever is here, now; with the reason, of a correction. */
  nowByline(reason?: string): string
  /** A moment in words. */
  sayMoment(at: string): string
}
