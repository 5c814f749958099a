import 'server-only'
import type { PremixPlan } from '../../calc/weighing/types'
import type { Composition } from '../../calc/formula/types'
import type {
  Allergen,
  BlindTask,
  CountedPart,
  DoseBasis,
  DoseHow,
  DoseOf,
  EqualBy,
  GoodDirection,
  HeldTotal,
  HoldsFor,
  IngredientKind,
  MarginUnit,
  MeasureLevel,
  StageKind,
  TrialKind,
} from '../../db/generated/enums'

/* ---- What a plan is drawn up from ---- */

export type PlanIngredient = {
  id: string
  name: string
  kind: IngredientKind
  activeName: string | null
  activeShare: number | null
  customary: { leastPct: number; mostPct: number; source: string } | null
  allergens: Allergen[]
  allergensChecked: boolean
  dustCaution: boolean
  isEnded: boolean
  composition: Composition | null
  /** What of it counts in the totals of a dough; null for what is usual of its kind. */
  counts: CountedPart[] | null
  /** Takes up so much water that equal water makes no equal dough. */
  bindsWater: boolean
}

export type PlanScale = {
  id: string
  name: string
  resolutionG: number
  repeatabilityG: number | null
  leastG: number | null
  mostG: number
}
export type PlanMixer = { id: string; name: string; leastG: number; mostG: number; frictionCPerMin: number | null }

export type PlanDeclared = {
  bakery: string
  trial: string
  number: number
  kind: TrialKind
  question: string
  note: string
  formula: { id: string; name: string }
  controlVersion: { id: string; number: number; contentHash: string | null }
  measure: { id: string; name: string; unit: string; digits: number; level: MeasureLevel; direction: GoodDirection }
  margin: number
  marginUnit: MarginUnit
  confidencePct: number
  mixingDays: number
  batchesPerArm: number
  piecesPerBatch: number
  /** Left out where nothing is set apart within doughs, so that plans from before there were factors read the same. */
  factor?: { name: string; levels: string[] }
  heldTotals: HeldTotal[]
  /** `these_days`: each dough is an answer by itself, and nothing is said of other mixing days. */
  holdsFor: HoldsFor
  /** Who does these is not to know which dough is which; null in plans from before that was declared. */
  blinded: BlindTask[] | null
  flourTempC: number
  roomTempC: number
  tapTempC: number
}

export type PlanProcess = {
  scalingMassG: number
  doughLossPct: number
  doughTempC: number
  mixTimeS: number
  bulkTimeS: number
  proofTimeS: number
  bakeTempC: number
  bakeTimeS: number
}

export type PlanStage = {
  id: string
  kind: StageKind
  name: string
  lines: { id: string; ingredientId: string; pctFlour: number }[]
}
export type PlanDoseAsked = {
  ingredientId: string
  basis: DoseBasis
  doseOf: DoseOf
  /** With 'more' how much more than the control, or less where it is below zero; with 'in_place' how much of the other goes out. */
  value: number
  how: DoseHow
  /** Only with 'in_place', as `equalBy`. */
  insteadOfId: string | null
  /** Only with 'in_place': everything of the other goes out, whatever that is, and the value is 0. */
  allOfIt: boolean
  equalBy: EqualBy | null
}

/** What a baker chose for the lines of one ingredient in one kind of stage, beside the rules. */
export type LineChoice = {
  stageKind: StageKind
  ingredientId: string
  /** Whether it may move to make room for a dose; null as is usual of its kind. */
  mayMove: boolean | null
  /** The scale that it goes on; null as the rule finds it. */
  scaleId: string | null
}

export type PlanFacts = {
  declared: PlanDeclared
  process: PlanProcess
  /** Of the control's formula, in order. */
  stages: PlanStage[]
  /** Test arms in order, without the control. */
  arms: { name: string; onTop: boolean; doses: PlanDoseAsked[] }[]
  /** Of lines that are there. */
  choices: LineChoice[]
  /** Every ingredient that is named above. */
  ingredients: PlanIngredient[]
  /** The one that was chosen for the trial: it is used wherever it can weigh a line. */
  scale: PlanScale | null
  /** All that may be used, the chosen one among them. */
  scales: PlanScale[]
  mixer: PlanMixer | null
  waters: PlanWaters
  /** What closed trials of the formula say of how much a difference changes from day to day. */
  ownSpread: OwnSpread
}

/** SD by day of a kind of dough on logarithms of the measure, with its degrees of freedom; both 0 where nothing is known. */
export type OwnSpread = { sd: number; df: number /** Closed trials that it comes from. */; trials: number }

/** What the bakery has beside the tap to make mixing water of; null for what nobody wrote down. */
export type PlanWaters = {
  /** `mostC` is the hottest that water may go on a dough. */
  hot: { tempC: number; mostC: number } | null
  chilled: { tempC: number } | null
  ice: { tempC: number } | null
}

/* ---- The plan ---- */

export type PlanWarningCode =
  | 'above-customary'
  | 'below-customary'
  | 'composition-unknown'
  | 'allergen-added'
  | 'allergen-unchecked'
  | 'dose-coarse'
  | 'rounded-to-nothing'
  | 'below-scale'
  | 'above-scale'
  | 'chosen-scale-coarse'
  | 'chosen-scale-below'
  | 'chosen-scale-above'
  | 'chosen-scale-gone'
  | 'no-scale'
  | 'balance-no-movable-line-carries-it'
  | 'balance-dose-brings-more-than-can-go'
  | 'balance-totals-conflict'
  | 'balance-scale-too-coarse'
  | 'balance-not-stated'
  | 'line-emptied'
  | 'composition-above-100'
  | 'looks-like-share'
  | 'balance-asked-about'
  | 'water-to-consistency'
  | 'mixer-below'
  | 'mixer-above'
  | 'one-batch-per-arm'
  | 'place-tied-to-allergen'
  | 'dust'
  | 'ingredient-ended'

/** `dose` is the dose at fault, from 0, and none where the arm or the whole plan is. Numbers in `facts` have their unit in the name. */
export type PlanWarning = { code: PlanWarningCode; dose: number | null; facts: Record<string, string | number> }

export type PlanLine = {
  stageId: string
  ingredientId: string
  ingredient: string
  kind: IngredientKind
  /** Which of the arm's doses it is, from 0; null for a line of the control's. */
  dose: number | null
  controlG: number
  exactG: number
  weighedG: number
  /** The scale that it goes on, together with all else of its ingredient in the stage; null without any. */
  scaleId: string | null
  /** exact less control; 0 where nothing was moved. */
  changeG: number
  atBound: 'min' | 'max' | null
}

export type PlanDose = PlanDoseAsked & {
  ingredient: string
  activeName: string | null
  activeShare: number | null
  /** Name of what it takes the place of. */
  insteadOf: string | null
  /** What the control has of it, what this dough has, and what goes out of the other ingredient, g; before balancing. */
  controlG: number
  inAllG: number
  removedG: number
  /** What is put in beside the control's lines; 0 where the dose takes out only. */
  productG: number
  productPctFlour: number
  /** Null without a scale. Error at k = 2, for about 95 %. */
  weighing: { errorPct: number; leastG: number; premix: PremixPlan | null } | null
}

export type PlanTotal = {
  total: HeldTotal
  isHeld: boolean
  controlG: number | null
  differenceG: number | null
  differencePctFlour: number | null
}

export type PlanWater =
  | {
      outcome: 'known'
      waterTempC: number
      waterG: number /** Steps of its scale. */
      resolutionG: number
      way: WaterWay
      isGuess: boolean
      frictionC: number
    }
  | { outcome: 'no-plain-water' | 'friction-too-high' }

export type WaterFrom = 'tap' | 'hot' | 'chilled' | 'ice'
export type WaterPart = {
  from: WaterFrom
  massG: number
  tempC: number /** Nobody wrote it down; a usual value was taken. */
  isUsual: boolean
}

/** What the mixing water is made of; parts are on the marks of its scale and add up to the line. */
export type WaterWay =
  | { outcome: 'mix'; parts: WaterPart[] }
  /** No water does it. The nearest that can be had, the temperature that it stands for, and what the dough comes out at; null in a plan of the first form. */
  | {
      outcome: 'not-possible'
      reason: 'colder-than-all-ice' | 'hotter-than-allowed' | 'too-much-ice' | 'never-melts'
      nearestTempC: number
      parts: WaterPart[]
      doughTempC: number | null
    }

export type PlanArm = {
  position: number
  name: string
  onTop: boolean
  outcome: 'control' | 'on-top' | 'balanced' | 'nothing-to-balance' | 'not-balanced'
  doses: PlanDose[]
  lines: PlanLine[]
  totals: PlanTotal[]
  doughG: number
  doughWeighedG: number
  allergens: Allergen[]
  addedAllergens: Allergen[]
  /** Names of ingredients whose allergens nobody has checked. */
  uncheckedIngredients: string[]
  water: PlanWater
  warnings: PlanWarning[]
}

export type PlanBatch = {
  day: number
  place: number
  /** Position of the arm. */
  arm: number
  code: string
  /** What earlier doughs may have left that this one must not carry: allergens, and names of unchecked ingredients. */
  cleanDownOf: string[]
}

export type PlanPower =
  | {
      outcome: 'simulated'
      runs: number
      residualDf: number
      batchCvPct: number
      loafCvPct: number
      /** How much the difference itself changes by day; null for these days only, and in plans from before it counted. */
      armByDay: ArmByDay | null
      rows: { truePct: number; powerShare: number; powerSe: number }[]
      /** What twice the mixing days, and twice the doughs a day, would bring; null where the chance is not low. */
      otherwise: {
        truePct: number
        mixingDays: number
        daysPowerShare: number
        batchesPerArm: number
        doughsPowerShare: number
      } | null
    }
  | { outcome: 'not-gain' | 'one-batch' | 'no-degrees' | 'margin-in-units' | 'no-direction' }

export type ArmByDay = {
  cvPct: number
  /** `both`: what closed trials showed, pooled with what is assumed. */
  from: 'own' | 'both' | 'assumed'
  assumedCvPct: number
  /** Of closed trials; 0 where none says anything. */
  ownDf: number
  trials: number
}

/** Frozen by `textOfPlan` of lib/documents: what changes here wants a new format there, or it does not compile. */
export type Plan = {
  declared: PlanDeclared
  process: PlanProcess
  stages: { id: string; kind: StageKind; name: string }[]
  scale: PlanScale | null
  scales: PlanScale[]
  mixer: PlanMixer | null
  size: { doughs: number; pieces: number; flourG: number; doughG: number; doughInAllG: number }
  /** What was chosen for lines beside the rules. */
  choices: (LineChoice & { ingredient: string })[]
  arms: PlanArm[]
  /** Null until it is proposed: the order is drawn then. */
  order: {
    method: string
    seed: string
    batches: PlanBatch[]
    cleanDownAfterDay: { day: number; of: string[] }[]
  } | null
  power: PlanPower
  warnings: PlanWarning[]
}
