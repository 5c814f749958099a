export type Matrix = readonly (readonly number[])[]

export type MixedRow = {
  arm: string
  /** Level of every fixed and random factor that the model names. */
  factors: Readonly<Record<string, string>>
  /** Value of every covariate that the model names. */
  covariates?: Readonly<Record<string, number>>
  y: number
}

export type MixedModel = {
  /** The control first; a single name leaves nothing to compare. */
  arms: readonly string[]
  /** Additive factors, complete blocks among them. */
  fixed?: readonly string[]
  /** Measured conditions with one slope each, common to all arms. */
  covariates?: readonly string[]
  /** The one fixed factor whose interaction with the arm is declared. */
  byArm?: string
  /** Levels of a fixed factor in the order of its columns; of a factor that is not here, as they come in the rows. */
  levelOrder?: Readonly<Record<string, readonly string[]>>
  /** One or two names of random intercepts, nested or crossed: `['batch']`, `['batch', 'block']`. */
  random: readonly string[]
}

/** A column of the fixed part: its term, and the level (of arm and factor for an interaction) that it stands for. */
export type DesignColumn = { term: string; level: string | null; arm: string | null }

export type Design = {
  /** n × p by rows: intercept, fixed factors, covariates about their means, arms, interaction. */
  x: number[][]
  columns: DesignColumn[]
  /** In the order stated, or else of first appearance; of the arm in the order given. */
  levels: Readonly<Record<string, readonly string[]>>
  covariateMeans: Readonly<Record<string, number>>
}

/** Levels of two random factors that hang together: no row links them to any other component. */
export type Component = {
  fine: { count: number; sum: number[]; links: { coarse: number; count: number }[] }[]
  /** Sums of the rows of each coarse level about the means of their fine levels: 0 where nested. */
  coarse: { about: number[] }[]
  /** Σ over fine levels of diag(c) − c cᵀ / n, c their counts in each coarse level: 0 where nested. */
  crossing: number[][]
}

/** Everything about the rows that the fit needs, formed once; its size is that of levels, not of rows. */
export type CrossProducts = {
  n: number
  p: number
  /** Names of the random factors, the one of most levels first. */
  names: string[]
  /** Number of levels, and rows in the largest level, for each name. */
  levelCounts: number[]
  largestLevels: number[]
  /** [X y]ᵀ[X y] about the means of the fine levels, (p + 1) × (p + 1). */
  within: number[][]
  components: Component[]
}

/** Products at one set of variance ratios θ, with V = I + Σ θₖ Gₖ, Gₖ = Zₖ Zₖᵀ and U = [X y]. */
export type WeightedProducts = {
  /** Order of U less one. */
  p: number
  logDet: number
  /** Uᵀ V⁻¹ U */
  whole: number[][]
  /** Uᵀ V⁻¹ Gₖ V⁻¹ U */
  first: number[][][]
  /** Uᵀ V⁻¹ Gₖ V⁻¹ Gₗ V⁻¹ U, its symmetrical part */
  second: number[][][][]
  /** tr V⁻¹ Gₖ */
  traces: number[]
  /** tr V⁻¹ Gₖ V⁻¹ Gₗ */
  doubleTraces: number[][]
}

/** With P = V⁻¹ − V⁻¹X(XᵀV⁻¹X)⁻¹XᵀV⁻¹. */
export type ProjectedMoments = {
  /** (XᵀV⁻¹X)⁻¹ and the logarithm of the determinant of XᵀV⁻¹X */
  inverse: number[][]
  logDetX: number
  coefficients: number[]
  /** yᵀPy */
  residual: number
  /** yᵀPGₖPy */
  first: number[]
  /** yᵀPGₖPGₗPy */
  second: number[][]
  /** tr PGₖ */
  traces: number[]
  /** tr PGₖPGₗ */
  doubleTraces: number[][]
}
