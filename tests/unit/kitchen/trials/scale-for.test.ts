import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanScale } from '@/lib/kitchen/trials/plan-types'
import { scaleFor } from '@/lib/kitchen/trials/scale-for'
import { forLong } from '@/tests/support/long'

const scale = (id: string, resolutionG: number, mostG: number, leastG: number | null = null): PlanScale => ({
  id,
  name: id,
  resolutionG,
  repeatabilityG: 0,
  leastG,
  mostG,
})
const large = scale('large', 5, 30_000)
const fine = scale('fine', 0.01, 600)
const choose = (scales: PlanScale[], preferredId: string | null, massG: number, tellG = massG) =>
  scaleFor({ scales, preferredId, massG, tellG })?.id ?? null

describe('the scale for a line', () => {
  it('is the one that can: water on 30 kg by 5 g, salt and an enzyme on 600 g by 0.01 g', () => {
    // Net of two readings of a mark d: u = d / √6, at k = 2 (JCGM 100:2008, F.2.2.1). On 5 g steps 36 g are ± 11.3 %, 1.2 g ± 340 %.
    expect([11_400, 36, 1.2].map((massG) => choose([large, fine], 'large', massG))).toEqual(['large', 'fine', 'fine'])
  })

  it('stays the preferred one where that is near enough', () => {
    // 1 g steps: ± 0.816 g, which is 1 % of 81.6 g.
    const bench = scale('bench', 1, 6_000)
    expect([100, 82, 81].map((massG) => choose([bench, fine], 'bench', massG))).toEqual(['bench', 'bench', 'fine'])
    expect(choose([bench, fine], null, 100)).toBe('fine')
  })

  it('tells a dose within a larger line', () => {
    const bench = scale('bench', 1, 6_000)
    expect(choose([bench, fine], 'bench', 204)).toBe('bench')
    expect(choose([bench, fine], 'bench', 204, 4)).toBe('fine')
  })

  it('carries the mass: 3,200 g go on the 30 kg scale although the 3 kg one was chosen', () => {
    expect(choose([scale('dose', 0.1, 3_000), large], 'dose', 3_200)).toBe('large')
  })

  it('is not below its least load where another takes it, and is the nearest there is where none does', () => {
    expect(choose([scale('bench', 1, 6_000, 20), scale('second', 2, 6_000)], 'bench', 10)).toBe('second')
    expect(choose([scale('bench', 1, 6_000, 20)], 'bench', 10)).toBe('bench')
    expect(choose([fine, large], 'fine', 40_000)).toBe('large')
    expect(choose([], null, 100)).toBeNull()
  })

  it('is never over-loaded nor under-loaded while one is there that can', () => {
    const scales = fc.uniqueArray(
      fc.record({
        id: fc.stringMatching(/^[a-e]$/),
        resolutionG: fc.constantFrom(0.01, 0.1, 1, 5),
        mostG: fc.constantFrom(200, 3_000, 30_000),
        leastG: fc.constantFrom(null, 1, 20, 100),
      }),
      { selector: ({ id }) => id, minLength: 1 },
    )
    fc.assert(
      fc.property(scales, fc.double({ min: 0.01, max: 50_000, noNaN: true }), (rows, massG) => {
        const all = rows.map((row) => ({ ...row, name: row.id, repeatabilityG: null }))
        const can = ({ leastG, mostG }: PlanScale) => massG <= mostG && massG >= (leastG ?? 0)
        const chosen = scaleFor({ scales: all, preferredId: all[0]!.id, massG, tellG: massG })
        expect(chosen).not.toBeNull()
        expect(can(chosen!)).toBe(all.some(can))
      }),
      { seed: 3, numRuns: forLong(300, 5_000) },
    )
  })
})
