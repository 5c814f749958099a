import 'server-only'
import { readPlan } from '../../documents/plan/read-plan'
import { isMixingWater } from '../trials/mixing-water'
import { linesToWeigh, type PremixToMake, type ScaleNamed } from '../trials/lines-to-weigh'
import { sureOf } from '../sure-of'
import { apartOfLine, linesOfPlan, partOf } from './lines-of-plan'
import { weighingsOfBatch, type LineOfBatch } from './weighings-of-batch'

/** One line of a dough with all that somebody needs who stands at the scale. */
export type LineOnList = Omit<LineOfBatch, 'target'> & {
  target: NonNullable<LineOfBatch['target']>
  /** The water that the mixer is given. */
  isWater: boolean
  /** As `toleranceOfLine` takes it, so that the tolerance can be worked out for another scale. */
  apartG: number | null
  /** On which the plan puts it; none where no scale is known. */
  scale: ScaleNamed | null
  /** What its sum is made of, where that is more than one thing. */
  parts: { isDose: boolean; massG: number }[]
}

type Asked = Omit<Parameters<typeof weighingsOfBatch>[0], 'arm'> & {
  /** Position of what the dough is; whoever is given this list knows it. */
  arm: number
}

/**
 * The lines of one dough in the order of the plan, those it has nothing of among them, with targets, tolerances, scales
 * and what stands of each, and the premixes that are made for it. Null where its plan cannot be read.
 */
export function weighListOfBatch(q: Asked): { lines: LineOnList[]; premixes: PremixToMake[] } | null {
  const { planText, planHash } = q.plan
  const read = planText === null || planHash === null ? null : readPlan(planText, planHash)
  const written = weighingsOfBatch(q)
  if (read?.outcome !== 'read' || !written) return null
  const { plan } = read
  const arm = sureOf(
    plan.arms.find(({ position }) => position === q.arm),
    'the arm of a dough in its plan',
  )
  const { stages, premixes } = linesToWeigh(plan, arm)
  const own = stages.flatMap(({ lines }) => lines)
  const ofPlan = linesOfPlan(plan)
  const lines = written.map((line, at): LineOnList => {
    const { stage, ingredient, part } = line
    const weighed = own.find(
      (each) => each.stageId === stage.id && each.ingredientId === ingredient.id && partOf(each) === part,
    )
    const { isDose, targets } = sureOf(ofPlan[at], 'a line of the plan')
    return {
      ...line,
      isWater: part === 'line' && weighed !== undefined && isMixingWater({ ingredient: weighed, stage }),
      target: sureOf(line.target, 'the target of a dough that is known'),
      apartG: apartOfLine({ isDose, targets }, q.arm),
      scale: weighed?.scale ?? null,
      parts: weighed?.parts ?? [],
    }
  })
  return { lines, premixes }
}
