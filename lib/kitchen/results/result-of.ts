import 'server-only'
import type { DeskActor } from '../../auth/actor'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { isEnded, isOpen } from '../trials/rules'
import { analyseOnce } from './analyse-once'
import type { aroundReadings } from './around-readings'
import { compareOtherwise } from './compare-otherwise'
import { notableDifference } from './conditions-by-arm'
import { costsOfTrial } from './costs-of-trial'
import { countBatches, meanOf } from './count-batches'
import { doughAsMixed } from './dough-as-mixed'
import { headlineComparison } from './headline-comparison'
import type { loadEvidence } from './load-evidence'
import { isBroken } from './load-sealed'
import { outOfOrderDays } from './out-of-order-days'
import { volumesOfTrial } from './volumes-of-trial'

/**
 * What a trial showed. Until its readings are closed it says how far the baking is, what was read of each dough under
 * its code, and nothing of any arm. For
 * those who see costs, beside it the ingredient cost of each arm at the prices of a day: amounts are decimal text in
 * major units, not rounded, and before that what the plan says.
 * @param day YYYY-MM-DD, in the bakery's zone
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function resultOf(
  db: Db,
  actor: DeskActor,
  evidence: Awaited<ReturnType<typeof loadEvidence>> & Awaited<ReturnType<typeof aroundReadings>>,
  day: string,
) {
  const { bakeryId } = actor
  const { header, declared, batches, arms, gaps, sealed, causes, knew, losses, marks } = evidence
  // Of what is not what was closed nothing is concluded.
  const analysed = analyseOnce(declared, batches).then((worked) =>
    isBroken(sealed) ? { ...worked, comparison: null, limits: [] } : worked,
  )
  const volumes = () =>
    analysed.then(({ comparison }) =>
      volumesOfTrial({ declared, batches, measureCode: header.measure.code, comparison }),
    )
  const [analysis, costs] = await Promise.all([
    analysed,
    levelOf(actor, 'see-costs') === 'yes' ? costsOfTrial(db, bakeryId, evidence, day, volumes()) : null,
  ])
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
    /** The same with the doughs counted that were read and taken out, and going by what was weighed last; null where those are the same doughs. */
    ...(analysis.comparison ? await compareOtherwise(declared, batches) : nothingOtherwise),
    /** What the headline rests on. */
    headline: await headlineComparison({
      declared,
      batches,
      comparison: analysis.comparison,
      found: evidence.conduct.foundCauses,
    }),
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
    },
    /** What was read or weighed around a check that failed, by the doughs' codes. */
    marks,
    /** What was weighed that was not as planned; null where it was closed before that was written down. */
    weighings: evidence.weighings && {
      ...evidence.weighings,
      // A line that is off, and what was typed, tell which dough a code stands for.
      ...(analysis.comparison ? {} : { off: [], corrections: [] }),
    },
    /** Who knew which dough is which, who entered readings knowing it, and who looked; null until the readings are closed. */
    knew: knew && { blinded: header.blinded, measures: knew.measures, knowers: knew.knowers, lookers: knew.lookers },
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
    costs,
    /** How many mixing days are short of a dough that can still be made up for, while the trial is open. */
    shortDays: losses?.days.filter(({ whyNot }) => whyNot === null).length ?? 0,
    mayImport: isOpen(header.state) && levelOf(actor, 'import-readings') === 'yes',
    /** What somebody decided on it; null as long as nobody has. */
    decision: evidence.decision,
    isEnded: isEnded(header.state),
    mayDecide: levelOf(actor, 'draft-formula') === 'yes',
    mayClose: header.state === 'baking' && levelOf(actor, 'approve-plan') === 'yes',
  }
}

const nothingOtherwise = { withTakenOut: null, asLastWeighed: null }
