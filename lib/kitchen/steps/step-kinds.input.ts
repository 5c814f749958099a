/** What is done with a dough, in the order of the trade. Bulk fermentation begins when a dough is mixed. */
export const stepKinds = [
  'mixing_begun',
  'mixed',
  'folded',
  'scaled',
  'pre_shaped',
  'moulded',
  'retarding_begun',
  'proof_begun',
  'scored',
  'in_oven',
  'out_of_oven',
  'cooled',
] as const

export type StepKind = (typeof stepKinds)[number]

/** What is said of a step beside when it was; null where that was not said. */
export type StepDetails = {
  /** Of the moulder. */
  setting: string | null
  chamberTempC: number | null
  /** Deck and place in the oven. */
  place: string | null
  setTempC: number | null
  readTempC: number | null
  steam: boolean | null
  /** What else is in the oven. */
  beside: string | null
}
export type StepDetail = keyof StepDetails

/** What each step can say of itself; the others say only when they were. */
export const detailsOfStep: Readonly<Partial<Record<StepKind, readonly StepDetail[]>>> = {
  moulded: ['setting'],
  retarding_begun: ['chamberTempC'],
  proof_begun: ['chamberTempC'],
  in_oven: ['place', 'setTempC', 'readTempC', 'steam', 'beside'],
}

/** Every detail that a step of some kind has. */
export const stepDetails = [...new Set(Object.values(detailsOfStep).flat())]

/** No chamber is colder and no oven of a bakery hotter. Common practice, no source. */
export const stepTempC = { least: -40, most: 500 }

/** A step that is longer ago than this is of another day than this dough's. */
export const longestAgoS = 86_400
