import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { calendarDay } from '../text.input'
import { isEnded, isOpen } from '../trials/rules'
import { analyseOnce } from './analyse-once'
import { compareWithTakenOut } from './compare-with-taken-out'
import { notableDifference } from './conditions-by-arm'
import { costsOfTrial } from './costs-of-trial'
import { lossesOfTrial } from '../repairs/losses-of-trial'
import { repairsOfTrial } from '../repairs/repairs-of-trial'
import { causesOfTrial } from './causes-of-trial'
import { countBatches, meanOf } from './count-batches'
import { doughAsMixed } from './dough-as-mixed'
import { isBroken, loadEvidence } from './load-evidence'
import { whoKnew } from './who-knew'

/**
 * What a trial showed. Until its readings are closed it says how far the baking is, what was read of each dough under
 * its code, and nothing of any arm. For
 * those who see costs, beside it the ingredient cost of each arm at the prices of a day, the bakery's today unless one
 * is named: amounts are decimal text in major units, not rounded, and before that what the plan says.
 * Refuses: not-found, took-too-long, not-worked-out.
 */
export const getResult = query({
  name: 'results.get-result',
  input: z.strictObject({ trialId: z.uuid(), pricesOn: calendarDay.optional() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const [evidence, causes, repairs, losses, knew, decision] = await Promise.all([
      loadEvidence(db, bakeryId, input.trialId),
      causesOfTrial(db, bakeryId, input.trialId),
      repairsOfTrial(db, bakeryId, input.trialId),
      lossesOfTrial(db, { bakeryId, trialId: input.trialId, now }),
      whoKnew(db, bakeryId, input.trialId),
      db.decision.findFirst({
        where: { bakeryId, trialId: input.trialId, takenBackAt: null },
        select: { id: true, number: true, outcome: true },
      }),
    ])
    const { header, declared, batches, arms, gaps, sealed } = evidence
    const worked = await analyseOnce(declared, batches)
    // Of what is not what was closed nothing is concluded.
    const analysis = isBroken(sealed) ? { ...worked, comparison: null, limits: [] } : worked
    const { counted } = countBatches({ factor: declared.factor, batches })
    const means = new Map(analysis.comparison?.points.map(({ batchId, mean }) => [batchId, mean]))
    const why = new Map(analysis.uncounted.map((each) => [each.batch.id, each.why]))
    const { uncounted: _, ...shown } = analysis
    return {
      trial: header,
      /** Whether what is in the book is what was closed. */
      sealed,
      declared,
      analysis: shown,
      /** The same with the doughs counted that were taken out after they were read; null where none were. */
      withTakenOut: analysis.comparison && (await compareWithTakenOut(declared, batches)),
      batches: batches.map(({ id, code, arm, day, plannedOrder, state, stateWhy, pieces }) => {
        const values = pieces.flatMap(({ value }) => value ?? [])
        return {
          id,
          code,
          // Which dough a code stands for is told with the result, not before it.
          arm: analysis.comparison ? arm : null,
          day,
          plannedOrder,
          state,
          stateWhy,
          /** What was read of each of its loaves. */
          values,
          mean: means.get(id) ?? (values.length > 0 && !analysis.comparison ? meanOf(values) : null),
          uncounted: analysis.comparison ? (why.get(id) ?? null) : null,
        }
      }),
      /** What is missing, unsettled or odd about the measured doughs. */
      gaps,
      /** What was done to the readings beside the plan, by the codes of the doughs. */
      conduct: {
        ...evidence.conduct,
        corrections: evidence.conduct.corrections.map((correction) => ({
          ...correction,
          knewKey: knew?.correctedKnowing.has(correction.id) ?? false,
        })),
        causes,
        /** What was done about losses: doughs baked again, places exchanged, mixing days added. */
        repairs,
      },
      /** Who knew which dough is which, who entered readings knowing it, and who looked; null until the readings are closed. */
      knew: knew && { measures: knew.measures, knowers: knew.knowers, lookers: knew.lookers },
      outOfOrderDays: analysis.comparison ? outOfOrderDays(batches) : [],
      notableDifference,
      /** What each dough was mixed with, water as it was taken. */
      mixed: analysis.comparison
        ? arms.map(({ position, lines }) =>
            doughAsMixed(
              position,
              lines,
              counted.filter(({ batch }) => batch.arm === position).map(({ batch }) => batch),
            ),
          )
        : [],
      costs:
        levelOf(actor, 'see-costs') === 'yes'
          ? await costsOfTrial(db, bakeryId, evidence, input.pricesOn ?? dayInZone(now, evidence.timeZone))
          : null,
      /** How many mixing days are short of a dough that can still be made up for, while the trial is open. */
      shortDays: isOpen(header.state) ? losses.days.filter(({ whyNot }) => whyNot === null).length : 0,
      mayImport: isOpen(header.state) && levelOf(actor, 'import-readings') === 'yes',
      /** What somebody decided on it; null as long as nobody has. */
      decision,
      isEnded: isEnded(header.state),
      mayDecide: levelOf(actor, 'draft-formula') === 'yes',
      mayClose: header.state === 'baking' && levelOf(actor, 'approve-plan') === 'yes',
    }
  },
})

/** Mixing days on which the doughs were begun in another order than the drawn one. */
function outOfOrderDays(batches: readonly { day: number; plannedOrder: number; begunAt: Date | null }[]): number[] {
  const days = [...new Set(batches.map(({ day }) => day))]
  return days.filter((day) => {
    const asDrawn = batches
      .filter((batch) => batch.day === day)
      .sort((a, b) => a.plannedOrder - b.plannedOrder)
      .flatMap(({ begunAt }) => begunAt?.getTime() ?? [])
    const asBegun = [...asDrawn].sort((a, b) => a - b)
    return asDrawn.some((begun, i) => begun !== asBegun[i])
  })
}
