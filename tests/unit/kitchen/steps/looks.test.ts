import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { StoodStep } from '@/lib/kitchen/steps/course-of-dough.input'
import { lookAt, lookOf, noLooks, oddWait, type Look } from '@/lib/kitchen/steps/looks.input'
import { stepKinds, type StepKind } from '@/lib/kitchen/steps/step-kinds.input'

const planned = { mixTimeS: 600, bulkTimeS: 5400, proofTimeS: 3600, bakeTimeS: 2400 }
const looks = {
  foldEveryMin: 30,
  restLookMin: 15,
  restMostMin: 40,
  coolLookMin: 60,
  coolMostMin: 180,
  retardLookMin: 480,
  retardMostMin: 960,
}
const min = 60_000
let count = 0
const at = (minute: number, step: StepKind): StoodStep => ({ id: `${count++}`, step, atMs: minute * min })
const stood = fc.record({ id: fc.uuid(), step: fc.constantFrom(...stepKinds), atMs: fc.integer({ min: 0, max: 1e9 }) })

describe('what somebody is called to look at', () => {
  it.each([
    ['nothing before it is mixed', [at(0, 'mixing_begun')], null],
    ['a fold from when it was mixed', [at(9, 'mixed')], ['fold', 9, 30, 99]],
    ['the next fold from the last one', [at(9, 'mixed'), at(39, 'folded'), at(50, 'folded')], ['fold', 50, 30, 99]],
    ['no fold when bulk is over by then', [at(9, 'mixed'), at(70, 'folded')], null],
    ['no fold once it is scaled', [at(9, 'mixed'), at(60, 'scaled')], null],
    ['the rest', [at(60, 'scaled'), at(70, 'pre_shaped')], ['rest', 70, 15, 110]],
    ['nothing once it is moulded', [at(70, 'pre_shaped'), at(90, 'moulded')], null],
    ['the retarder', [at(90, 'moulded'), at(95, 'retarding_begun')], ['retard', 95, 480, 1055]],
    ['nothing in the proof', [at(95, 'retarding_begun'), at(600, 'proof_begun')], null],
    ['what cools', [at(190, 'in_oven'), at(230, 'out_of_oven')], ['cool', 230, 60, 410]],
    ['nothing once it has cooled', [at(230, 'out_of_oven'), at(300, 'cooled')], null],
  ] as const)('is %s', (_, given, expected) => {
    const look = lookOf(given, looks, planned)
    expect(look && [look.phase, look.fromMs / min, look.everyMs / min, look.mostMs / min]).toEqual(expected)
  })

  it('is nothing of what the bakery has not said, whatever was done', () => {
    fc.assert(
      fc.property(fc.array(stood, { maxLength: 16 }), (given) => {
        expect(lookOf(given, noLooks, planned)).toBeNull()
      }),
      { seed: 81 },
    )
  })
})

describe('a look at a moment', () => {
  const rest: Look = { stepId: 's', phase: 'rest', fromMs: 0, everyMs: 15 * min, mostMs: 40 * min }

  it('is to come, then calls, calls again for whoever silenced it, and says when it has waited longest', () => {
    expect(lookAt(rest, 14 * min)).toEqual({ key: 's 1', endsMs: 15 * min, isLongest: false })
    expect(lookAt(rest, 15 * min)).toEqual({ key: 's 1', endsMs: 15 * min, isLongest: false })
    expect(lookAt(rest, 31 * min)).toEqual({ key: 's 2', endsMs: 30 * min, isLongest: false })
    expect(lookAt(rest, 40 * min)).toEqual({ key: 's most', endsMs: 40 * min, isLongest: true })
    expect(lookAt(rest, 4000 * min)).toEqual({ key: 's most', endsMs: 40 * min, isLongest: true })
    expect(lookAt({ ...rest, phase: 'fold' }, 40 * min)).toBeNull()
  })

  it('never calls after the longest wait but for that, nor twice under one key', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 600 }),
        fc.integer({ min: 1, max: 600 }),
        fc.integer({ min: -60, max: 3000 }),
        (look, more, nowMin) => {
          const of: Look = { ...rest, everyMs: look * min, mostMs: (look + more) * min }
          const now = lookAt(of, nowMin * min)!
          expect(now.endsMs).toBeLessThanOrEqual(of.mostMs)
          expect(now.isLongest).toBe(nowMin >= look + more)
          const later = lookAt(of, (nowMin + look) * min)!
          if (nowMin >= look && !now.isLongest) expect(later.key).not.toBe(now.key)
        },
      ),
      { seed: 82 },
    )
  })
})

describe('a look and the longest wait', () => {
  it('are said together, the longest longer', () => {
    expect(oddWait(looks)).toBeNull()
    expect(oddWait(noLooks)).toBeNull()
    expect(oddWait({ ...noLooks, foldEveryMin: 30 })).toBeNull()
    expect(oddWait({ ...looks, restMostMin: null })).toEqual({ field: 'restMostMin', code: 'missing' })
    expect(oddWait({ ...looks, coolLookMin: null })).toEqual({ field: 'coolLookMin', code: 'missing' })
    expect(oddWait({ ...looks, retardMostMin: 480 })).toEqual({ field: 'retardMostMin', code: 'not-above-look' })
  })
})
