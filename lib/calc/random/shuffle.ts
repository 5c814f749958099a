import { randomIndex } from './random-index'
import type { Random } from './seeded-random'

/**
 * A copy of the list in random order, every order equally likely.
 * Source: Durstenfeld (1964), CACM 7(7), algorithm 235 (Fisher and Yates' shuffle).
 */
export function shuffle<T>(random: Random, list: readonly T[]): T[] {
  const copy = [...list]
  for (let last = copy.length - 1; last > 0; last--) {
    const other = randomIndex(random, last + 1)
    const held = copy[last] as T
    copy[last] = copy[other] as T
    copy[other] = held
  }
  return copy
}
