/** What the book says of this tablet. */
export type StationFacts = {
  station: { id: string; name: string }
  bakery: { name: string; timeZone: string; locale: string }
  people: { id: string; name: string }[]
}

export type FloorPlace = {
  piece: number | null
  factorLevel: string | null
  repeat: number
  reading: { value: string; unit: string; at: string; who: string } | null
}

export type FloorMeasure = {
  id: string
  name: string
  unit: string
  digits: number
  least: number
  most: number
  level: 'batch' | 'piece'
  isWanted: boolean
  places: FloorPlace[]
}

export type FloorDough = {
  id: string
  code: string
  state: 'weighing' | 'in_work' | 'baked'
  trialNumber: number
  formulaName: string
  dayNumber: number
  day: string | null
  turn: number | null
  /** In words. */
  allergens: string[]
  unchecked: number
  measures: FloorMeasure[]
}

/** What is to be read, as the book says it: no weights, no costs, and not which dough is which. */
export type Floor = { doughs: FloorDough[] }
