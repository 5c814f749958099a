import type { Design, DesignColumn } from './types'

export type TermContrasts = {
  /** Control at the first level of each factor and covariate 0. */
  intercept: number[]
  /** Mean of each arm, averaged over the levels of every factor with equal weight, at the covariates' means. */
  armMeans: { arm: string; weights: number[] }[]
  /** Arm minus control, averaged likewise. */
  differences: { arm: string; weights: number[] }[]
  /** One for each term of the fixed part but the intercept: its effects as a joint hypothesis. */
  terms: { term: string; weights: number[][] }[]
}

/**
 * Weights on the coefficients of a design for what is asked of it. With an interaction, a difference of arms is averaged
 * over the levels, and a difference of levels over the arms, so that a balanced trial gives the classical table.
 * @param design from designMatrix; @param byArm the factor with an interaction, if any
 * Source: least-squares means, Harvey (1960); Searle (1971), Linear Models, chapter 8.
 */
export function termContrasts(design: Design, byArm?: string): TermContrasts {
  const { columns, levels, covariateMeans } = design
  const over = (weight: (column: DesignColumn) => number) => columns.map(weight)
  const arms = levels.arm!
  const perLevel = byArm === undefined ? 0 : 1 / levels[byArm]!.length
  const difference = (arm: string) =>
    over((c) => (c.term === 'arm' && c.level === arm ? 1 : c.arm === arm ? perLevel : 0))
  const average = over((c) =>
    c.term === 'intercept'
      ? 1
      : c.term === 'arm' || c.arm !== null || c.level === null
        ? 0
        : 1 / levels[c.term]!.length,
  )
  const terms = [...new Set(columns.map(({ term }) => term))].filter((term) => term !== 'intercept')
  return {
    intercept: over(({ term, level }) => (term === 'intercept' ? 1 : level === null ? -covariateMeans[term]! : 0)),
    armMeans: arms.map((arm) => ({ arm, weights: difference(arm).map((value, j) => value + average[j]!) })),
    differences: arms.slice(1).map((arm) => ({ arm, weights: difference(arm) })),
    terms: terms.map((term) => {
      const own = columns.filter((column) => column.term === term)
      if (term === 'arm') return { term, weights: own.map(({ level }) => difference(level!)) }
      if (term !== byArm) return { term, weights: own.map((column) => over((c) => (c === column ? 1 : 0))) }
      return {
        term,
        weights: own.map(({ level }) =>
          over((c) => (c.level !== level ? 0 : c.term === term ? 1 : c.arm === null ? 0 : 1 / arms.length)),
        ),
      }
    }),
  }
}
