import type { IngredientKind, StageKind } from '../../db/generated/enums'

/** A line of an arm's dough as it was planned, in order. */
export type PlannedLine = {
  stageId: string
  ingredientId: string
  kind: IngredientKind
  massG: number
  controlMassG: number
}
export type PlannedStage = { id: string; kind: StageKind; name: string }
export type DraftedStage = { kind: StageKind; name: string; lines: { ingredientId: string; pctFlour: number }[] }

/** So fine that a dose of hundredths of a ppm (1 ppm is 0.0001 %) still has its digits. */
const pctDigits = 6

/**
 * The planned masses of an arm as baker's percentages on all flour of all stages, stage by stage as in the control.
 * A dose of what the stage holds already is added to that line; what was balanced away to nothing, and a stage with
 * nothing left in it, are gone.
 * @param lines masses of one batch, g, ≥ 0, some of them flour
 * @returns percentages rounded to six decimals; one that would round to nothing keeps its digits
 * @throws RangeError when there is no flour
 */
export function stagesOfArm(stages: readonly PlannedStage[], lines: readonly PlannedLine[]): DraftedStage[] {
  const flourG = lines.reduce((sum, { kind, massG }) => sum + (kind === 'flour' ? massG : 0), 0)
  if (!(flourG > 0)) throw new RangeError('a dough without flour has no percentages on it')
  return stages.flatMap((stage) => {
    const own = withDosesAdded(lines.filter(({ stageId }) => stageId === stage.id)).filter(({ massG }) => massG > 0)
    const drafted = own.map(({ ingredientId, massG }) => ({
      ingredientId,
      pctFlour: roundedPct((100 * massG) / flourG),
    }))
    return drafted.length === 0 ? [] : [{ kind: stage.kind, name: stage.name, lines: drafted }]
  })
}

/** Lines of the control stand for themselves; one that it has not joins the first of the same ingredient. */
function withDosesAdded(lines: readonly PlannedLine[]): { ingredientId: string; massG: number }[] {
  const merged: { ingredientId: string; massG: number }[] = []
  for (const { ingredientId, massG, controlMassG } of lines) {
    const there = controlMassG === 0 ? merged.find((line) => line.ingredientId === ingredientId) : undefined
    if (there) there.massG += massG
    else merged.push({ ingredientId, massG })
  }
  return merged
}

function roundedPct(pct: number): number {
  const rounded = Math.round(pct * 10 ** pctDigits) / 10 ** pctDigits
  return rounded > 0 ? rounded : pct
}

export type DecisionState = 'waiting' | 'signed' | 'kept' | 'taken-back'

/** Where a decision stands. */
export function stateOfDecision(decision: {
  outcome: 'change' | 'keep'
  takenBackAt: Date | null
  version: { signedAt: Date | null } | null
}): DecisionState {
  if (decision.takenBackAt) return 'taken-back'
  if (decision.outcome === 'keep') return 'kept'
  return decision.version?.signedAt ? 'signed' : 'waiting'
}

/** The verdicts with which a question was answered as whoever asked it hoped. */
const hopedFor = new Set(['better', 'no-worse', 'same'])

/** What a trial did not show of an arm that somebody chooses all the same; null when it showed what was hoped for. */
export type NotShown =
  | 'indication'
  | 'look-only'
  | 'no-verdict'
  | 'in-doubt'
  | 'better-on-pooled-error-only'
  | 'worse'
  | 'no-worthwhile-difference'
  | 'undecided'
  | 'different'

/**
 * What is to be said plainly beside a change to an arm. A verdict that is not the hoped-for one does not forbid it.
 * @param isIndication the trial was stopped before it was whole
 */
export function notShown(
  arm: { standing: string; verdict: { verdict: string } | null; doubts: readonly unknown[] },
  isIndication: boolean,
): NotShown | null {
  if (isIndication) return 'indication'
  if (arm.standing !== 'compared') return 'look-only'
  if (!arm.verdict) return 'no-verdict'
  if (!hopedFor.has(arm.verdict.verdict)) return arm.verdict.verdict as NotShown
  return arm.doubts.length > 0 ? 'in-doubt' : null
}
