import 'server-only'
import { armByDaySpread, type SpreadTrial } from '../../calc/analysis/arm-by-day-spread'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'
import { hashOfFacts } from '../heavy/hash-of-facts'
import { keepLast } from '../heavy/keep-last'
import { hasTrueZero } from '../stores/has-true-zero'
import { guessedSpread } from '../trials/guessed-spread'
import type { OwnSpread } from '../trials/plan-types'
import { countBatches } from './count-batches'
import type { JudgedContent } from './judge-content'
import { judgeClosing } from './judge-readings'

/** Those closed last: ovens, flours and hands of long ago say less of the next trial. */
const mostTrials = 12
const kept = keepLast<OwnSpread>(100)

/**
 * How much differences between doughs of a formula changed from mixing day to mixing day, by a measure, in its trials
 * that were closed: as they were closed, by the doughs that count in their results. A closing that cannot be read says
 * nothing here; its result says so.
 */
export async function spreadOfClosedTrials(
  from: Db | Tx,
  q: { bakeryId: string; formulaId: string; measureId: string },
): Promise<OwnSpread> {
  const { bakeryId, formulaId, measureId } = q
  const closings = await from.closing.findMany({
    where: { bakeryId, trial: { formulaId, measureId } },
    orderBy: [{ at: 'desc' }, { trialId: 'desc' }],
    take: mostTrials,
    select: { trialId: true, hash: true },
  })
  if (closings.length === 0) return { sd: 0, df: 0, trials: 0 }
  return kept(hashOfFacts([bakeryId, closings]), async () => {
    const trials: SpreadTrial[] = []
    for (const { trialId, hash } of closings) {
      const read = await judgeClosing(from, { bakeryId, trialId, hash })
      if (read.outcome === 'read') trials.push(...(trialOf(read.closing, read.judged) ?? []))
    }
    const { sd, df, trials: telling } = armByDaySpread(trials)
    return { sd, df, trials: telling }
  })
}

/** On logarithms, as a difference in % is judged; null for a trial that says nothing. */
function trialOf({ declared }: Closing, { batches }: JudgedContent): [SpreadTrial] | null {
  const { counted } = countBatches({ factor: declared.factor, batches })
  if (!hasTrueZero(declared.measure) || counted.length === 0 || counted.some(({ mean }) => mean <= 0)) return null
  const loaves = counted.reduce((sum, { values }) => sum + values.length, 0) / counted.length
  const loafShare = declared.measure.level === 'piece' ? guessedSpread.loafCvPct ** 2 / loaves : 0
  return [
    {
      rows: counted.map(({ batch, mean }) => ({
        arm: String(batch.arm),
        block: String(batch.day),
        y: Math.log(mean),
      })),
      arms: declared.arms.map(({ position }) => String(position)),
      assumedDoughSd: Math.sqrt(guessedSpread.batchCvPct ** 2 + loafShare) / 100,
    },
  ]
}
