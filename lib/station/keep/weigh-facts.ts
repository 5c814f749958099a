/** A lot that a line may be taken from: in use, and of an ingredient whose allergens are known. */
export type LotOffered = {
  id: string
  code: string
  isPast: boolean
  /** Said at a bench, and not compared with the stores yet; left out by builds that knew of none. */
  isToConfirm?: boolean
  /** Said at this bench by its code alone: the book tells which lot that is. */
  isTyped?: boolean
}

/** A lot that a line was taken from, and what it gave; null where it gave all of it. */
export type LotFrom = LotOffered & {
  massG: number | null
  /** The lot that it was found to be, where its code was typed wrongly. */
  sameAs?: string | null
}

/** One line of a dough as the book gives it to whoever opened its weights. */
export type WeighLine = {
  stageId: string
  stage: string
  ingredientId: string
  part: 'line' | 'dose' | 'premix'
  /** In words. */
  name: string
  /** Every dough has the same of it, so it may be ticked. */
  isSame: boolean
  /** It is the water that the mixer is given; left out by builds that did not say. */
  isWater?: boolean
  /** Its dust is harmful. */
  isDusty: boolean
  /** Nothing is said of its allergens, so no lot of it goes into a dough; left out by builds that did not know. */
  isAllergensUnknown?: boolean
  target: { massG: number; stepG: number; toleranceG: number | null }
  /** As the rule of tolerances takes it. */
  apartG: number | null
  scale: { id: string; name: string } | null
  /** What the sum is made of, where that is more than one thing. */
  parts: { isDose: boolean; massG: number }[]
  /** How it is made first, step by step, where it is a premix. */
  howTo: string[]
  /** What it may be taken from, the latest delivery first. */
  lots: LotOffered[]
  stands: {
    id: string
    who: string
    personId: string
    /** When it came into the book. */
    at: string
    how: 'ticked' | 'weighed' | 'left_out'
    massG: number | null
    lots: LotFrom[]
  } | null
}

export type Scale = { id: string; name: string; stepG: number; leastG: number | null; mostG: number }

/** What one dough weighs, and on which scales it can be. */
export type WeighList = {
  batchId: string
  code: string
  unit: 'g' | 'oz'
  lines: WeighLine[]
  scales: Scale[]
}

/** A scale that takes another's place for the lines that are still to be weighed; null for lines without one. */
export type Swap = { from: string | null; to: string }

/** A weigh list on the tablet. The weights tell which dough it is: it is shown to nobody but who opened them. */
export type KeptList = {
  batchId: string
  list: WeighList
  /** As last fetched, ms. */
  at: number
  /** Persons, by their ids, of whom the book has noted it. */
  openedBy: string[]
  swaps: Swap[]
}
