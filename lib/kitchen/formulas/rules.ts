import type {
  Composition,
  Formula,
  IngredientKind as CalcKind,
  StageKind as CalcStageKind,
} from '../../calc/formula/types'
import { doughYield } from '../../calc/formula/dough-yield'
import { formulaTotals } from '../../calc/formula/formula-totals'
import { hydration } from '../../calc/formula/hydration'
import { massesFromPercentages } from '../../calc/formula/masses-from-percentages'
import { nutrientTotals, type NutrientTotal } from '../../calc/formula/nutrient-totals'
import type { Allergen, IngredientKind, StageKind } from '../../db/generated/enums'

/** How far from 100 the flour of all stages may add up to, in % on flour: what two decimals on three lines can lose. */
const flourTolerancePct = 0.01

/**
 * By how much the flour of all stages misses 100 %, in % on flour; 0 within the tolerance.
 * @example lines of 60 % and 39 % flour: −1
 */
export function flourOffPct(lines: readonly { kind: IngredientKind; pctFlour: number }[]): number {
  const offPct = lines.reduce((sum, line) => sum + (line.kind === 'flour' ? line.pctFlour : 0), 0) - 100
  // Room for binary fractions at the edge itself: 33.33 + 33.33 + 33.33 is off by 0.01 and a hair.
  return Math.abs(offPct) <= flourTolerancePct + 1e-9 ? 0 : offPct
}

/* ---- Which version is in production ---- */

export type VersionTimes = { id: string; number: number; signedAt: Date | null; effectiveAt: Date | null }
export type VersionState = 'draft' | 'discarded' | 'coming' | 'in-production' | 'withdrawn'

/** Of two signed versions the one that takes effect later stands; at one moment, the one signed later. */
export function inProduction<V extends VersionTimes>(versions: readonly V[], at: Date): V | null {
  let standing: V | null = null
  for (const version of versions) {
    if (!version.signedAt || !version.effectiveAt || version.effectiveAt > at) continue
    if (!standing || takesOver(version, standing)) standing = version
  }
  return standing
}

function takesOver(next: VersionTimes, standing: VersionTimes): boolean {
  const byEffect = Number(next.effectiveAt) - Number(standing.effectiveAt)
  const bySignature = Number(next.signedAt) - Number(standing.signedAt)
  return (byEffect || bySignature || next.number - standing.number) > 0
}

/**
 * Where a version stands at a moment, among all versions of its formula: a draft until it is signed or discarded,
 * coming until its time, in production from that very millisecond until another takes over, and withdrawn after.
 */
export function stateOfVersion(
  version: VersionTimes & { discardedAt: Date | null },
  versions: readonly VersionTimes[],
  at: Date,
): VersionState {
  if (version.discardedAt) return 'discarded'
  if (!version.signedAt || !version.effectiveAt) return 'draft'
  if (version.effectiveAt > at) return 'coming'
  return inProduction(versions, at)?.id === version.id ? 'in-production' : 'withdrawn'
}

/* ---- Allergens ---- */

/** Allergens of all ingredients, and the ingredients whose allergens nobody has checked. */
export type AllergenSum = { known: Allergen[]; uncheckedIngredients: { id: string; name: string }[] }

export type AllergenChange = {
  added: Allergen[]
  gone: Allergen[]
  newlyUnchecked: string[]
  noLongerUnchecked: string[]
}

/** What differs in allergens from one content to another. Not knowing is a difference too. */
export function allergenChange(from: AllergenSum, to: AllergenSum): AllergenChange {
  const without = <T>(list: readonly T[], other: readonly T[]) => list.filter((each) => !other.includes(each))
  const names = (sum: AllergenSum, other: AllergenSum) => {
    const ids = new Set(other.uncheckedIngredients.map(({ id }) => id))
    return sum.uncheckedIngredients.filter(({ id }) => !ids.has(id)).map(({ name }) => name)
  }
  return {
    added: without(to.known, from.known),
    gone: without(from.known, to.known),
    newlyUnchecked: names(to, from),
    noLongerUnchecked: names(from, to),
  }
}

export function changesAllergens({ added, gone, newlyUnchecked, noLongerUnchecked }: AllergenChange): boolean {
  return added.length + gone.length + newlyUnchecked.length + noLongerUnchecked.length > 0
}

/* ---- Figures of a formula written in percentages ---- */

export type FiguredLine = {
  ingredientId: string
  kind: IngredientKind
  pctFlour: number
  composition: Composition | null
}
export type FiguredStage = { kind: StageKind; lines: readonly FiguredLine[] }
export type BatchSize = { pieces: number; scalingMassG: number; doughLossPct: number }

export type FormulaFigures = {
  floursPct: number
  /** Sum of all lines as written, % on flour. */
  totalPct: number
  /** Masses of the batch; null when no batch was asked for. */
  batch: { flourMassG: number; doughMassG: number; lineMassesG: number[][]; stageMassesG: number[] } | null
  stages: { pctFlour: number; flourSharePct: number }[]
  preFermentedFlourPct: number
  /** Plain water only, % on flour. */
  plainWaterPct: number
  /** Water of every ingredient but flour, % on flour, and the ingredients that do not say: then it is at least that. */
  waterBesideFlour: { pctFlour: number; unknownIngredientIds: string[] }
  /** Dough from 100 parts of flour: of flour and plain water, and of everything. */
  doughYield: { flourAndWater: number; everything: number }
  nutrients: (Omit<NutrientTotal, 'notStatedLineIds'> & { unknownIngredientIds: string[] })[]
}

/**
 * All figures of a formula, for page and editor alike; null as long as it holds no flour.
 * @throws CalcError for a percentage below zero, or a batch outside its bounds
 */
export function figuresOf(stages: readonly FiguredStage[], batch: BatchSize | null): FormulaFigures | null {
  const formula = formulaOn100(stages)
  const flours = formula.lines.filter((line) => line.isFlour)
  const floursPct = flours.reduce((sum, line) => sum + line.massG, 0)
  if (!(floursPct > 0)) return null
  const totals = formulaTotals(formula)
  const ingredientOf = new Map(formula.lines.map((line) => [line.id, line.ingredientId]))
  const ingredientsOf = (lineIds: readonly string[]) => [...new Set(lineIds.map((id) => ingredientOf.get(id) ?? id))]
  const besideFlour = hydration(formula, 'water-beside-flour')
  const yieldOfDough = doughYield(formula)
  return {
    floursPct,
    totalPct: totals.doughMassG,
    batch: batch && batchMasses(formula, stages, batch),
    stages: totals.stages.map((stage) => ({ pctFlour: stage.massG, flourSharePct: 100 * stage.flourShare })),
    preFermentedFlourPct: 100 * totals.preFermentedFlourShare,
    plainWaterPct: hydration(formula, 'plain-water').pctFlour,
    waterBesideFlour: {
      pctFlour: besideFlour.pctFlour,
      unknownIngredientIds: ingredientsOf(besideFlour.notStatedLineIds),
    },
    doughYield: { flourAndWater: yieldOfDough.netPct, everything: yieldOfDough.grossPct },
    nutrients: nutrientTotals(formula).totals.map(({ notStatedLineIds, ...total }) => ({
      ...total,
      unknownIngredientIds: ingredientsOf(notStatedLineIds),
    })),
  }
}

function batchMasses(formula: Formula, stages: readonly FiguredStage[], batch: BatchSize): FormulaFigures['batch'] {
  const scaled = massesFromPercentages({
    lines: formula.lines.map((line) => ({ id: line.id, pctFlour: line.massG, isFlour: line.isFlour })),
    target: {
      by: 'pieces',
      pieces: batch.pieces,
      pieceMassG: batch.scalingMassG,
      lossShares: [batch.doughLossPct / 100],
      losses: { on: 'dough', combine: 'added' },
    },
  })
  const massOf = new Map(scaled.lines.map((line) => [line.id, line.massG]))
  const lineMassesG = stages.map((stage, s) => stage.lines.map((_, l) => massOf.get(`${s}.${l}`) ?? 0))
  const stageMassesG = lineMassesG.map((masses) => masses.reduce((sum, massG) => sum + massG, 0))
  return { flourMassG: scaled.flourMassG, doughMassG: scaled.doughMassG, lineMassesG, stageMassesG }
}

/** The formula with each percentage as grams on 100 g of flour. Lines are named by stage and place: `0.2`. */
function formulaOn100(stages: readonly FiguredStage[]): Formula {
  return {
    stages: stages.map((stage, s) => ({ id: String(s), kind: calcStageKinds[stage.kind] })),
    lines: stages.flatMap((stage, s) =>
      stage.lines.map((line, l) => ({
        id: `${s}.${l}`,
        ingredientId: line.ingredientId,
        stageId: String(s),
        massG: line.pctFlour,
        kind: calcKinds[line.kind],
        isFlour: line.kind === 'flour',
        // The stores do not say which dairy or fat is poured, so only water counts here, and the page says so.
        isPouredLiquid: line.kind === 'water',
        composition: line.composition,
      })),
    ),
  }
}

const calcStageKinds: Record<StageKind, CalcStageKind> = {
  final_dough: 'final-dough',
  pre_ferment: 'pre-ferment',
  scald: 'scald',
  soaker: 'soaker',
}

/** What an ingredient of the stores is to the calculations. */
export const calcKinds: Record<IngredientKind, CalcKind> = {
  flour: 'flour',
  water: 'water',
  salt: 'salt',
  leaven: 'yeast',
  fat: 'fat',
  sugar: 'sugar',
  dairy: 'dairy',
  egg: 'egg',
  malt: 'other',
  improver: 'improver',
  seed_or_grain: 'other',
  other: 'other',
}
