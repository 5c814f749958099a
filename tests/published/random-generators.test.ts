import { expect, describe, test } from 'vitest'
import { fnv1a } from '@/lib/calc/random/fnv1a'
import { splitMix } from '@/lib/calc/random/split-mix'
import { xoshiro } from '@/lib/calc/random/xoshiro'

// Exact integers: no tolerance.
describe('random number generators against their reference outputs', () => {
  test('FNV-1a, 64 bit: test vectors of RFC 9923 and the FNV reference code', () => {
    expect(fnv1a('a')).toBe(0xaf63dc4c8601ec8cn)
    expect(fnv1a('foobar')).toBe(0x85944171f73967e8n)
  })

  test("SplitMix64 from 1234567: outputs of Vigna's splitmix64.c, as printed on Rosetta Code (Splitmix64)", () => {
    const next = splitMix(1234567n)
    expect([next(), next(), next(), next(), next()]).toEqual([
      6457827717110365317n,
      3203168211198807973n,
      9817491932198370423n,
      4593380528125082431n,
      16408922859458223821n,
    ])
  })

  test("xoshiro128** from 1, 2, 3, 4: outputs of Blackman & Vigna's xoshiro128starstar.c v1.1, as carried by rand_xoshiro", () => {
    const next = xoshiro([1, 2, 3, 4])
    expect(Array.from({ length: 10 }, next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ])
  })
})
