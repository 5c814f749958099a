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
}

/**
 * Rows and model of a trial given as a plain table, batch random. Batch names need only differ within arm and block: a
 * batch is one mix, so the same name under another arm or block is another batch.
 * @param table arms with the control first; a column that the choices do not name is left out
 * @example tableModel({ rows: [], arms: ['a'], blocks: 'none', levels: 'none', covariates: 'none' }).model.random // ['batch']
 */
export function tableModel(table: TrialTable): { rows: MixedRow[]; model: MixedModel } {
  const [blocks, levels, covariates] = [table.blocks !== 'none', table.levels !== 'none', table.covariates !== 'none']
  return {
    rows: table.rows.map(({ arm, batch, block, level, covariate, y }) => ({
      arm,
      factors: {
        batch: JSON.stringify([arm, blocks ? block : null, batch]),
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
      random: table.blocks === 'random' ? ['batch', 'block'] : ['batch'],
    },
  }
}
