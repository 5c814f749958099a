import 'server-only'
import { currentReadings } from '../readings/current-readings'
import { gapsOfBatches, type BatchGaps } from '../readings/gaps-of-trial'
import { judgeWeighings, type JudgedWeighings } from '../weighings/judge-weighings'
import { conductOfTrial, type Conduct } from './conduct-of-trial'
import type { TrialContent } from './content-of-trial'
import { readingsOfTrial } from './readings-of-trial'
import type { ConditionCode, MeasuredBatch } from './trial-facts'

export type JudgedContent = {
  /** Every dough in its drawn order, with what was read of it. */
  batches: readonly MeasuredBatch[]
  /** What is missing, unsettled or odd of the measured ones, in their order. */
  gaps: readonly BatchGaps[]
  /** How the readings came about. */
  conduct: Conduct
  /** What comes of what was weighed; null where it was closed before that was written down. */
  weighings: Omit<JudgedWeighings, 'out' | 'outAsLast'> | null
}

const nothingRead = {
  pieces: [],
  conditions: { 'dough-temp': null, 'proof-time': null, 'water-added': null } satisfies Record<ConditionCode, null>,
}

/** What the readings of a trial come to: corrections in place of what they correct, repeats brought together. */
export function judgeContent(
  content: TrialContent,
  trial: { measure: Parameters<typeof readingsOfTrial>[0]['primary']; piecesPerBatch: number },
): JudgedContent {
  const { measures, doughs, readings } = content
  const held = currentReadings(
    readings.map(({ dough, measure, supersedes, receivedAt, ...reading }) => ({
      ...reading,
      batchId: dough,
      measureId: measure,
      supersedesId: supersedes,
      receivedAt: new Date(receivedAt),
    })),
  )
  const weighed = judgeWeighings(content, trial.measure.id)
  const figures = readingsOfTrial({ readings: held, measures, primary: trial.measure })
  return {
    batches: doughs.map(({ begunAt, doneAt: _, keptAside: __, ...dough }) => ({
      ...dough,
      begunAt: begunAt === null ? null : new Date(begunAt),
      ...(figures.get(dough.id) ?? nothingRead),
      isOutOfItsArm: weighed?.out.has(dough.id) ?? false,
      isOutAsLastWeighed: weighed?.outAsLast.has(dough.id) ?? false,
    })),
    gaps: gapsOfBatches({
      trial: { measureId: trial.measure.id, piecesPerBatch: trial.piecesPerBatch },
      measures: measures.filter(({ isEnded }) => !isEnded),
      batches: doughs.filter(({ state }) => state === 'measured'),
      readings: held,
      toSettle: new Map(doughs.map(({ id, keptAside }) => [id, keptAside])),
    }),
    conduct: conductOfTrial(content),
    weighings: shownOf(weighed),
  }
}

function shownOf(weighed: JudgedWeighings | null): JudgedContent['weighings'] {
  if (!weighed) return null
  const { unwritten, partly, off, corrections } = weighed
  return { unwritten, partly, off, corrections }
}
