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
  /** Who took it and when, in words. */
  byline: string
  supersedesId: string | null
  outOfRange: boolean
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
}

export type Needs = 'repeat' | 'third' | null

/** One thing that is read: a measure of one piece, or of the whole batch. */
export type Place = { measureId: string; piece: number | null; factorLevel: string | null }

export function keyOfPlace({ measureId, piece, factorLevel }: Place): string {
  return `${measureId} ${piece ?? ''} ${factorLevel ?? ''}`
}

export type ReadingWords = Words['shift']['readings']
