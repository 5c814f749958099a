import 'server-only'
import { groupBy } from '../../calc/group-by'
import type { Closing } from '../../documents/closing/closing'
import { toleranceOfLine } from '../conduct/tolerance-of-line.input'
import { linesToWeigh, type LineToWeigh } from '../trials/lines-to-weigh'
import type { Plan, PlanArm } from '../trials/plan-types'
import { toConsistencyOf } from '../trials/to-consistency-of'

/** A line of a trial that is weighed for every dough of it, with what each kind of dough has of it. */
export type TrialLine = NonNullable<Closing['weighings']>['lines'][number]

type OfArm = {
  arm: Pick<PlanArm, 'position' | 'lines' | 'doses' | 'warnings'>
  line: LineToWeigh
  part: TrialLine['part']
}

/**
 * Everything that is put on a scale for any dough of a plan, in the order of its stages. All doughs have the same lines:
 * one that another dough has and this one has not is there with 0 g, because a line less would tell the code. The doughs
 * are about a line when a dose is on it, or when its ingredient is more, less or none of in one of them.
 */
export function linesOfPlan(plan: Pick<Plan, 'stages' | 'scales' | 'arms'>): TrialLine[] {
  const arms = [...plan.arms].sort((a, b) => a.position - b.position)
  const named = new Set(
    arms.flatMap(({ doses }) => doses.flatMap(({ ingredientId, insteadOfId }) => [ingredientId, insteadOfId])),
  )
  const all = arms.flatMap((arm) =>
    linesToWeigh(plan, arm).stages.flatMap(({ lines }) =>
      lines.map((line): OfArm => ({ arm, line, part: partOf(line) })),
    ),
  )
  return plan.stages.flatMap((stage) =>
    [
      ...groupBy(
        all.filter(({ line }) => line.stageId === stage.id),
        ({ line, part }) => `${line.ingredientId} ${part}`,
      ).values(),
    ].flatMap((ofLine): TrialLine[] => {
      const [first] = ofLine
      if (!first) return []
      const { line, part } = first
      const isDose =
        ofLine.some((each) => each.line.isDosed) || (stage.kind === 'final_dough' && named.has(line.ingredientId))
      return [
        {
          stage,
          ingredient: { id: line.ingredientId, name: line.ingredient },
          part,
          isDose,
          targets: targetsOf(arms, ofLine, isDose, stage.kind),
        },
      ]
    }),
  )
}

/** Whether every dough has the same of a line, so that it can be ticked by somebody who does not know which dough it is. */
export function isSameInAll({ targets }: Pick<TrialLine, 'targets'>): boolean {
  return targets.every(({ massG, toleranceG }) => massG === targets[0]?.massG && toleranceG !== null)
}

/** Whether a dose of an ingredient is put on a scale beside what the formula has of it in the same stage. */
export function isApart(line: TrialLine, lines: readonly TrialLine[]): boolean {
  return (
    line.part === 'dose' &&
    lines.some(
      ({ stage, ingredient, part }) =>
        part === 'line' && stage.id === line.stage.id && ingredient.id === line.ingredient.id,
    )
  )
}

/** What a line is of, as weighings name it. */
export function partOf(line: LineToWeigh): TrialLine['part'] {
  if (line.isPremix) return 'premix'
  return line.isDosed && line.parts.every(({ isDose }) => isDose) ? 'dose' : 'line'
}

function targetsOf(
  arms: readonly Pick<PlanArm, 'position' | 'warnings'>[],
  ofLine: readonly OfArm[],
  isDose: boolean,
  stageKind: TrialLine['stage']['kind'],
): TrialLine['targets'] {
  const finestG = Math.min(...ofLine.map(({ line }) => line.resolutionG))
  const planned = arms.map((arm) => {
    const own = ofLine.find((each) => each.arm.position === arm.position)?.line
    const isFree = stageKind === 'final_dough' && ofLine[0]?.line.kind === 'water' && toConsistencyOf(arm).length > 0
    return { arm: arm.position, massG: own?.weighedG ?? 0, stepG: own?.resolutionG ?? finestG, isFree }
  })
  return planned.map(({ isFree, ...target }) => {
    const apartG = apartOfLine({ isDose, targets: planned }, target.arm)
    return {
      ...target,
      toleranceG: isFree ? null : toleranceOfLine({ targetG: target.massG, stepG: target.stepG, apartG }),
    }
  })
}

/**
 * By how much a line that the doughs are about differs between a dough and the control, g; for the control, and for a
 * dough that has as much, by how much the nearest one does. Null for a line that no dough is about.
 */
export function apartOfLine(
  { isDose, targets }: { isDose: boolean; targets: readonly Pick<TrialLine['targets'][number], 'arm' | 'massG'>[] },
  position: number,
): number | null {
  if (!isDose) return null
  const controlG = targets.find(({ arm }) => arm === 0)?.massG ?? 0
  const fromControlG = ({ massG }: { massG: number }) => Math.abs(massG - controlG)
  const own = targets.find(({ arm }) => arm === position)
  return (own && fromControlG(own)) || Math.min(...targets.map(fromControlG).filter((apartG) => apartG > 0))
}
