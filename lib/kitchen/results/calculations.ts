import 'server-only'

/**
 * Which rules a result was worked out by: one more whenever the same readings come to another figure or verdict, so that
 * evidence says by which it was shown. 1: doughs as units, plain differences (evidence of format 1). 2: arm-day means,
 * ratios on logarithms for margins in %.
 */
export const calculations = 2
