import { fnv1a } from './fnv1a'
import { splitMix } from './split-mix'
import { xoshiro } from './xoshiro'

/** A source of uniform numbers, 0 ≤ u < 1, in steps of 2⁻⁵³. Always an argument, never `Math.random`. */
export type Random = () => number

/**
 * The generator of a stored seed: the same seed always gives the same numbers. Not for secrets.
 * The seed's text is hashed (FNV-1a, 64 bit), spread by SplitMix64 over the state of xoshiro128**, and two of its
 * 32-bit numbers make one uniform number of 53 bits. An integer seed stands for its decimal text.
 * @param seed text of any length, or an integer
 * @returns uniform numbers, 0 ≤ u < 1
 * Sources: at the three parts.
 */
export function seededRandom(seed: string | number): Random {
  const next64 = splitMix(fnv1a(String(seed)))
  const [a, b] = [next64(), next64()]
  const next32 = xoshiro([Number(a & 0xffffffffn), Number(a >> 32n), Number(b & 0xffffffffn), Number(b >> 32n)])
  return () => ((next32() >>> 5) * 0x4000000 + (next32() >>> 6)) / 0x20000000000000
}
