/**
 * xoshiro128** 1.1: successive 32-bit numbers, 0 ≤ n < 2³², from a state of four 32-bit words, not all zero.
 * Source: Blackman & Vigna (2021), "Scrambled linear pseudorandom number generators", ACM TOMS 47(4).
 */
export function xoshiro(state: readonly [number, number, number, number]): () => number {
  let [s0, s1, s2, s3] = state
  return () => {
    const result = Math.imul(rotateLeft(Math.imul(s1, 5), 7), 9)
    const t = s1 << 9
    s2 ^= s0
    s3 ^= s1
    s1 ^= s2
    s0 ^= s3
    s2 ^= t
    s3 = rotateLeft(s3, 11)
    return result >>> 0
  }
}

function rotateLeft(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits))
}
