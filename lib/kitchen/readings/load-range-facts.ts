import 'server-only'
import type { Db, Tx } from '../../db/client'
import { Prisma } from '../../db/generated/client'
import { isMixingWater, mixingWater } from '../trials/mixing-water'
import { whereTrial, type TrialOf } from '../trials/trial-of'
import { basisOfRange, type RangeFacts } from './plausible-range'

/** Of so many doughs of a product, measured last, the volume is usual; of fewer than the least nothing is known. */
const recentDoughs = { least: 3, most: 12 } as const

/** What the ranges of a trial's readings go by, as far as these measures ask for it; nothing of one that is not there. */
export async function loadRangeFacts(
  from: Db | Tx,
  bakeryId: string,
  of: TrialOf,
  measures: readonly Parameters<typeof basisOfRange>[0][],
): Promise<RangeFacts> {
  if (measures.every((measure) => basisOfRange(measure) === 'own')) return rangeFactsIn(null, new Map())
  const [trial, usualMlPerG] = await Promise.all([
    from.trial.findFirst({
      where: whereTrial(bakeryId, of),
      select: {
        controlVersion: { select: { scalingMassG: true } },
        arms: { select: { position: true, lines: { where: mixingWater, select: lineOfRange } } },
      },
    }),
    loadUsualVolumes(from, bakeryId, of, measures),
  ])
  return rangeFactsIn(trial, usualMlPerG)
}

/** Of a line of an arm what `rangeFactsIn` asks. */
export const lineOfRange = {
  weighedG: true,
  stage: { select: { kind: true } },
  ingredient: { select: { kind: true } },
} as const satisfies Prisma.ArmLineSelect

/** As `loadRangeFacts`, of a trial that was read with its lines, all or those of its water. */
export function rangeFactsIn(
  trial: {
    controlVersion: { scalingMassG: number }
    arms: readonly { position: number; lines: readonly Prisma.ArmLineGetPayload<{ select: typeof lineOfRange }>[] }[]
  } | null,
  usualMlPerG: RangeFacts['usualMlPerG'],
): RangeFacts {
  return {
    scalingMassG: trial?.controlVersion.scalingMassG ?? null,
    plannedWaterG: new Map(
      trial?.arms.map(({ position, lines }) => [
        position,
        lines.filter(isMixingWater).reduce((sum, { weighedG }) => sum + weighedG, 0),
      ]),
    ),
    usualMlPerG,
  }
}

/**
 * Of the trial's formula the median of the medians of the doughs that were measured last, so that neither one odd loaf nor one odd dough
 * moves it; readings that are themselves outside their range are left out. Nothing is asked where none of these measures goes by it.
 */
export async function loadUsualVolumes(
  from: Db | Tx,
  bakeryId: string,
  of: TrialOf,
  measures: readonly Parameters<typeof basisOfRange>[0][],
): Promise<Map<string, number>> {
  if (!measures.some((measure) => basisOfRange(measure) === 'recent')) return new Map()
  const own =
    'trialId' in of
      ? Prisma.sql`${of.trialId}::uuid`
      : Prisma.sql`(SELECT trial_id FROM batch WHERE bakery_id = ${bakeryId}::uuid AND id = ${of.batchId}::uuid)`
  const rows = await from.$queryRaw<{ measureId: string; mlPerG: number }[]>`
    SELECT measure_id AS "measureId", percentile_cont(0.5) WITHIN GROUP (ORDER BY ml_per_g) AS "mlPerG"
    FROM (
      SELECT r.measure_id, percentile_cont(0.5) WITHIN GROUP (ORDER BY r.value / v.scaling_mass_g) AS ml_per_g,
        row_number() OVER (PARTITION BY r.measure_id ORDER BY b.done_at DESC NULLS LAST, b.id) AS nth
      FROM trial t
      JOIN formula_version v ON v.bakery_id = t.bakery_id AND v.id = t.control_version_id
      JOIN batch b ON b.bakery_id = t.bakery_id AND b.trial_id = t.id AND b.state = 'measured'
      JOIN reading r ON r.bakery_id = t.bakery_id AND r.trial_id = t.id AND r.batch_id = b.id AND r.piece IS NOT NULL
      JOIN measure m ON m.bakery_id = t.bakery_id AND m.id = r.measure_id AND m.unit = 'mL'
      WHERE t.bakery_id = ${bakeryId}::uuid
        AND t.formula_id = (SELECT own.formula_id FROM trial own WHERE own.bakery_id = ${bakeryId}::uuid AND own.id = ${own})
        AND r.value BETWEEN coalesce(r.plausible_least, m.plausible_least) AND coalesce(r.plausible_most, m.plausible_most)
        AND NOT EXISTS (SELECT 1 FROM reading s WHERE s.bakery_id = r.bakery_id AND s.supersedes_id = r.id)
      GROUP BY r.measure_id, b.id, b.done_at
    ) AS of_dough
    WHERE nth <= ${recentDoughs.most}
    GROUP BY measure_id
    HAVING count(*) >= ${recentDoughs.least}`
  return new Map(rows.map(({ measureId, mlPerG }) => [measureId, mlPerG]))
}
