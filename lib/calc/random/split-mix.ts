/**
 * SplitMix64: successive 64-bit numbers from a 64-bit seed; used to fill another generator's state.
 * Source: Steele, Lea & Flood (2014), "Fast splittable pseudorandom number generators", OOPSLA;
 * constants of Vigna's splitmix64.c (2015).
 */
export function splitMix(seed: bigint): () => bigint {
  let state = BigInt.asUintN(64, seed)
  return () => {
    state = BigInt.asUintN(64, state + 0x9e3779b97f4a7c15n)
    let z = state
    z = BigInt.asUintN(64, (z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n)
    z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn)
    return z ^ (z >> 31n)
  }
}
