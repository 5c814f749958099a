import { CalcError } from '../error'
import type { MixedModel, MixedRow } from './types'

/** A trial as a plain table: one row per piece, names only where the trial has them. */
export type TrialTable = {
  rows: readonly { arm: string; batch: string; block?: string; level?: string; covariate?: number; y: number }[]
  arms: readonly string[]
  /** Complete blocks are fixed, incomplete ones random. */
  blocks: 'none' | 'fixed' | 'random'
  /** One factor within batches: with the same effect in every arm, or with its own in each. */
  levels: 'none' | 'additive' | 'by-arm'
  covariates: 'none' | 'common-slope'
  /** Whether batch 1 of another block is another batch. Asked for where blocks are no part of the model. */
  batchNames?: 'restart-in-each-block' | 'once-in-all'
  /** The blocks and the levels in the order of their columns; where not given, as they come in the rows. */
  blockOrder?: readonly string[]
  levelOrder?: readonly string[]
}

/**
 * Rows and model of a trial given as a plain table, batch random. Batch names need only differ within an arm, because a
 * batch is one mix: the same name under another arm is another batch. So is the same name in another block, unless it is
 * said that names are given once in all; where blocks are left out of the model, this must be said.
 * @param table arms with the control first; a column that the choices do not name is left out
 * @throws CalcError 'not-possible' with field `batchNames`, reason 'do-batches-restart'
 * @example tableModel({ rows: [], arms: ['a'], blocks: 'none', levels: 'none', covariates: 'none' }).model.random // ['batch']
 */
export function tableModel(table: TrialTable): { rows: MixedRow[]; model: MixedModel } {
  const [blocks, levels, covariates] = [table.blocks !== 'none', table.levels !== 'none', table.covariates !== 'none']
  const restarts = restartsInBlocks(table)
  const order = {
    ...(table.blocks === 'fixed' && table.blockOrder ? { block: table.blockOrder } : {}),
    ...(levels && table.levelOrder ? { level: table.levelOrder } : {}),
  }
  return {
    rows: table.rows.map(({ arm, batch, block, level, covariate, y }) => ({
      arm,
      factors: {
        batch: JSON.stringify([arm, restarts ? block : null, batch]),
        ...(blocks && block !== undefined ? { block } : {}),
        ...(levels && level !== undefined ? { level } : {}),
      },
      ...(covariates && covariate !== undefined ? { covariates: { covariate } } : {}),
      y,
    })),
    model: {
      arms: table.arms,
      fixed: [...(table.blocks === 'fixed' ? ['block'] : []), ...(levels ? ['level'] : [])],
      ...(covariates ? { covariates: ['covariate'] } : {}),
      ...(table.levels === 'by-arm' ? { byArm: 'level' } : {}),
      ...(Object.keys(order).length > 0 ? { levelOrder: order } : {}),
      random: table.blocks === 'random' ? ['batch', 'block'] : ['batch'],
    },
  }
}

/** Whether a batch's block belongs to its name. */
function restartsInBlocks({ rows, blocks, batchNames }: TrialTable): boolean {
  if (batchNames !== undefined) return batchNames === 'restart-in-each-block'
  if (blocks !== 'none') return true
  const home = new Map<string, string | undefined>()
  for (const { arm, batch, block } of rows) {
    const name = JSON.stringify([arm, batch])
    // batch 1 of Monday and batch 1 of Tuesday: one dough taken for two, or two for one, makes the result too sure or too unsure
    if (home.has(name) && home.get(name) !== block)
      throw new CalcError('not-possible', { field: 'batchNames', value: batch, reason: 'do-batches-restart' })
    home.set(name, block)
  }
  return false
}
