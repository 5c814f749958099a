import type { DifferenceTest } from './types'

/** Share that is right by guessing alone: one of three, or one of two. By the design of each test. */
export const CHANCE_SHARE: Readonly<Record<DifferenceTest, number>> = {
  triangle: 1 / 3,
  'three-afc': 1 / 3,
  'duo-trio': 1 / 2,
  paired: 1 / 2,
  'paired-two-sided': 1 / 2,
}

/** As many tasters as a panel of a bakery may ever have, and more; keeps every search short. */
export const MOST_TASTERS = 10_000
