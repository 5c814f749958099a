import { resultForms } from '@/app/(desk)/trials/[trialId]/result/result-forms'
import type { ShownBakery } from '@/app/(desk)/trials/[trialId]/result/shown-result'
import { wentWrongSentences } from '@/app/(desk)/trials/[trialId]/result/went-wrong-sentences'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import { currentReadings } from '@/lib/kitchen/readings/current-readings'
import type { Comparison } from '@/lib/kitchen/results/compare-arms'
import { judgeContent } from '@/lib/kitchen/results/judge-content'
import { headlineFrom } from '@/lib/kitchen/results/headline-from'
import { outOfOrderDays } from '@/lib/kitchen/results/out-of-order-days'
import { readingsOfTrial } from '@/lib/kitchen/results/readings-of-trial'
import { foundLaterCounted } from '@/lib/kitchen/results/counted-otherwise'
import type { DeclaredTrial, MeasuredBatch } from '@/lib/kitchen/results/trial-facts'
import { judgeWeighings } from '@/lib/kitchen/weighings/judge-weighings'
import type { Floor } from './floor'
import { causeNoted, foundBy, secondName } from './moves'

/** What a trial comes to in the eyes of whoever reads its page. */
export type GameOutcome = {
  /** Of the test doughs, in their order; null where there is no verdict. */
  verdicts: (string | null)[]
  /** A verdict of 'better' that nothing else throws doubt on. */
  isBetter: boolean
  /** Each sentence of what went otherwise than planned. */
  listed: string[]
}

export const gameBakery = { locale: 'en-GB', timeZone: 'UTC' } as unknown as ShownBakery

type Arm = { arm: number; verdict: { verdict: string } | null; doubts: readonly unknown[] }

/** As the page says it of every test dough; `comparison` is null where nothing is compared. */
export function verdictsOf(comparison: { arms: readonly Arm[] } | null): Pick<GameOutcome, 'verdicts' | 'isBetter'> {
  const arms = (comparison?.arms ?? []).filter(({ arm }) => arm > 0)
  return {
    verdicts: arms.map(({ verdict }) => verdict?.verdict ?? null),
    isBetter: arms.some(({ verdict, doubts }) => verdict?.verdict === 'better' && doubts.length === 0),
  }
}

/** What the page of a closed floor shows at a margin in %, by the app's own functions. */
export function outcomeOf(floor: Floor, margin: number): GameOutcome {
  const { setup } = floor
  const judged = judgedOf(floor)
  const declared = { ...setup.declared, margin, state: floor.state }
  const analysis = analyseTrial(declared, judged.batches)
  const listed = wentWrongSentences(
    {
      batches: judged.batches.map(asShown),
      gaps: [...judged.gaps],
      isEnded: true,
      weighings: judged.weighings,
      outOfOrderDays: outOfOrderDays(judged.batches),
      conduct: {
        ...judged.conduct,
        corrections: judged.conduct.corrections.map((each) => ({ ...each, knewKey: false })),
        foundCauses: floor.found.map(({ dough, at, isSigned }, i) => ({
          id: String(i),
          batchId: floor.dough(dough).id,
          code: dough,
          object: foundBy,
          what: causeNoted,
          at,
          who: setup.player.name,
          signed: isSigned ? { who: secondName, isAlone: false } : null,
        })),
        causes: floor.causes.map(({ dough, at }, i) => ({
          id: String(i),
          code: dough,
          what: causeNoted,
          noticedAt: at,
          at,
          who: setup.player.name,
        })),
      },
    },
    analysis.comparison?.flags ?? [],
    gameBakery,
    resultForms({
      result: { declared, analysis },
      measureCode: setup.primary.code,
      bakery: gameBakery,
      language: 'en',
    }),
  )
  return { ...verdictsOf(headlineOf(floor, declared, judged.batches, analysis.comparison)), listed }
}

/** What the headline rests on, without the worker that the app asks. */
function headlineOf(
  floor: Floor,
  declared: DeclaredTrial,
  batches: readonly MeasuredBatch[],
  comparison: Comparison | null,
): Comparison | null {
  const found = floor.found.map(({ dough, isSigned }) => ({
    batchId: floor.dough(dough).id,
    signed: isSigned ? {} : null,
  }))
  const taken = foundLaterCounted(batches, found, declared.batchesPerArm)
  const withThem = taken && analyseTrial(declared, taken.batches).comparison
  return headlineFrom(comparison, withThem && { codes: taken.codes, comparison: withThem }).comparison
}

function asShown({ id, code, arm, day, plannedOrder, state, stateWhy }: MeasuredBatch) {
  return { id, code, arm, day, plannedOrder, state, stateWhy, values: [], mean: null, uncounted: null }
}

function judgedOf(floor: Floor, code?: string) {
  const { primary, piecesPerBatch } = floor.setup
  return judgeContent(floor.content(code), { measure: primary, piecesPerBatch })
}

/** Mean of a dough's primary figures as they stand; null where there is none. */
export function figureOf(floor: Floor, code: string): number | null {
  const { setup } = floor
  const { measures, readings } = floor.content(code)
  const held = currentReadings(
    readings.map(({ dough, measure, supersedes, receivedAt, ...reading }) => ({
      ...reading,
      batchId: dough,
      measureId: measure,
      supersedesId: supersedes,
      receivedAt: new Date(receivedAt),
    })),
  )
  const read = readingsOfTrial({ readings: held, measures, primary: setup.primary }).get(floor.dough(code).id)
  const values = (read?.pieces ?? []).flatMap(({ value }) => value ?? [])
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Whether a dough is out of its arm by what was weighed of it. */
export function isOutOfItsArm(floor: Floor, code: string): boolean {
  const weighed = judgeWeighings(floor.content(code), floor.setup.primary.id)
  return weighed !== null && weighed.out.has(floor.dough(code).id)
}

/** Whether anything would be listed, were the trial closed now; of one dough where it is named. */
export function isListed(floor: Floor, code?: string): boolean {
  const { batches, gaps, conduct, weighings } = judgedOf(floor, code)
  const { corrections, furtherRepeats, oddTimes, fromFile, repairs } = conduct
  const { off, corrections: rewritten, partly, unwritten } = weighings!
  return (
    batches.some(({ stateWhy }) => stateWhy !== null) ||
    gaps.length > 0 ||
    corrections.length + furtherRepeats.length + oddTimes.length + fromFile + repairs.length > 0 ||
    off.length + rewritten.length + partly.length + unwritten.length > 0 ||
    outOfOrderDays(batches).length > 0 ||
    [...floor.causes, ...floor.found].some(({ dough }) => code === undefined || dough === code)
  )
}
