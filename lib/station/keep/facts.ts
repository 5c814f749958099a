import type { CheckedKind } from '../../kitchen/checks/judge-shown.input'
import type { PieceFigures } from '../../kitchen/shifts/count-fault.input'
import type { PlannedTimes } from '../../kitchen/steps/course-of-dough.input'
import type { Looks } from '../../kitchen/steps/looks.input'
import type { StepDetails, StepKind } from '../../kitchen/steps/step-kinds.input'
import type { WaterFacts } from '../../kitchen/water/tell-water.input'

/** What the book says of this tablet. */
export type StationFacts = {
  /** A word for the book as it runs now; another one after every start. */
  book: string
  station: { id: string; name: string }
  /** And after how many minutes without a touch nobody is on the tablet any more. */
  bakery: { name: string; timeZone: string; locale: string; stationIdleMin: number }
  people: { id: string; name: string; correctsAny: boolean }[]
}

export type FloorPlace = {
  piece: number | null
  factorLevel: string | null
  repeat: number
  reading: {
    id: string
    value: string
    unit: string
    /** In the measure's base unit. */
    inBase: number
    at: string
    receivedAt: string
    who: string
    personId: string
  } | null
}

export type FloorMeasure = {
  id: string
  /** Of those that every bakery has. */
  code: string | null
  name: string
  unit: string
  digits: number
  least: number
  most: number
  level: 'batch' | 'piece'
  /** Whether it is a volume by seed displacement, in mL. */
  byDisplacement: boolean
  isWanted: boolean
  /** How many readings it asks for, and by how much two may differ, in the base unit; null for a share of their mean. */
  repeats: number
  repeatLimit: number | null
  /** base = times × value + plus */
  toBase: { times: number; plus: number }
  /** At what age out of the oven it is read, h; none for any. */
  ageLeastH: number | null
  ageMostH: number | null
  places: FloorPlace[]
}

/** What the book says of any dough that a tablet shows. */
type ToldOfDough = {
  id: string
  code: string
  trialNumber: number
  formulaName: string
  dayNumber: number
  day: string | null
  /** In words. */
  allergens: string[]
  unchecked: number
}

/** One step as it was entered; of what was put right, what took its place too. */
export type FloorStep = StepDetails & {
  id: string
  step: StepKind
  isDone: boolean
  /** By the book's clock. */
  at: string
  receivedAt: string
  supersedesId: string | null
  who: string
  personId: string
}

export type FloorDough = ToldOfDough & {
  state: 'weighing' | 'in_work' | 'baked'
  revision: number
  begunAt: string | null
  bakedAt: string | null
  turn: number | null
  times: PlannedTimes
  /** What its water is told by; null on a floor from before that was told. */
  water: WaterFacts | null
  steps: FloorStep[]
  /** How its pieces were counted last, by the book's clock. */
  count: (PieceFigures & { id: string; at: string; who: string }) | null
  measures: FloorMeasure[]
}

/** The dough of a trial that is to be begun next. */
export type NextDough = ToldOfDough & {
  revision: number
  cleanDownFirst: boolean
  /** Its place in the day. */
  turn: number
  /** What waits after it on that day. */
  after: { id: string; code: string; turn: number }[]
}

/** A dough that is out. Words are the desk's. */
export type OutDough = Pick<ToldOfDough, 'id' | 'code' | 'trialNumber' | 'formulaName' | 'dayNumber'> & {
  /** In a word. */
  state: string
  /** Code of the dough that was made for it. */
  again: string | null
  /** What can be done, or why nothing can. */
  said: string
  /** What is tapped to bake it again, and what that means; null where it is not. */
  go: string | null
  note: string | null
}

/** A scale, thermometer or volume gauge in use, with its last check. */
export type FloorInstrument = {
  id: string
  name: string
  kind: CheckedKind
  /** Of a scale: the weight that it is checked with, where the bakery says, and the most it carries, g. */
  testMassG: number | null
  mostG: number | null
  /** Of a volume gauge: the block that it is checked with, where the bakery says, and the most it holds, mL. */
  blockMl: number | null
  volumeMl: number | null
  /** How far off it may be, g, °C or mL; null where that goes by the block that a check names. */
  offMost: number | null
  /** By how much a volume gauge showed too much then, mL; null for others. */
  last: { at: string; isGood: boolean; offMl: number | null } | null
}

/** What is to be begun and read, as the book says it: no weights, no costs, and not which dough is which. */
export type Floor = {
  /** By the book's clock, when it said so. */
  now: string
  temperatureUnit: '°C' | '°F'
  /** When somebody is called to look at a dough. */
  looks: Looks
  doughs: FloorDough[]
  next: NextDough[]
  /** What can be baked again, and what went out today. */
  out: OutDough[]
  /** When the bakery's day began and when it ends, by the book's clock. */
  day: { beganAt: string; endsAt: string }
  instruments: FloorInstrument[]
  /** There are trials that are not among them. */
  isCut: boolean
  /** What was left for this shift, by whoever is named, of a dough by its code. */
  notes: { id: string; text: string; who: string; at: string; code: string | null }[]
}
