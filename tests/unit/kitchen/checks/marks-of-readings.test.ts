import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { marksOfReadings, type CheckedInstrument, type Taken } from '@/lib/kitchen/checks/marks-of-readings'
import { readAround } from '@/lib/kitchen/checks/read-around'

const good = (at: number) => ({ at, isGood: true })
const bad = (at: number) => ({ at, isGood: false })

describe('what was read around a failed check', () => {
  it.each([
    ['between two good ones', [good(1), good(9)], null],
    ['without any check', [], null],
    ['after a good one, and nothing since', [good(1)], null],
    ['before a good one', [good(9)], null],
    ['between a good one and a failed one', [good(1), bad(9)], { outcome: 'before-failed', failedAt: 9, goodAt: 1 }],
    ['before a failed one, with none before', [bad(9)], { outcome: 'before-failed', failedAt: 9, goodAt: null }],
    ['after a failed one', [good(1), bad(3)], { outcome: 'after-failed', failedAt: 3, goodAt: null }],
    ['after a failed one, though it was good later', [bad(3), good(9)], { outcome: 'after-failed', failedAt: 3 }],
    ['between two failed ones', [bad(3), bad(9)], { outcome: 'after-failed', failedAt: 3 }],
    ['before a good one that a failed one follows', [good(9), bad(10)], null],
    ['at the moment of a failed one', [good(1), bad(5), good(9)], { outcome: 'after-failed', failedAt: 5 }],
    ['at the moment of a good one', [bad(1), good(5), bad(9)], null],
    ['before two checks of one moment, one of them failed', [good(1), good(9), bad(9)], { failedAt: 9, goodAt: 1 }],
  ])('is marked or not: %s', (_, checks, expected) => {
    const around = readAround(5, checks)
    if (expected === null) expect(around).toBeNull()
    else expect(around).toMatchObject(expected)
  })

  it('a failed check that is made over again marks no less', () => {
    expect(readAround(5, [good(1), bad(9), good(10), good(11)])).toMatchObject({ failedAt: 9, goodAt: 1 })
  })
})

const checks = fc.array(fc.record({ at: fc.nat(20), isGood: fc.boolean() }), { maxLength: 8 })
const instruments = fc.uniqueArray(
  fc.record({
    id: fc.constantFrom('a', 'b', 'c'),
    name: fc.constantFrom('Bench', 'Dose', 'Probe'),
    kind: fc.constantFrom('scale' as const, 'thermometer' as const, 'volume_gauge' as const),
    most: fc.option(fc.nat(10)),
    from: fc.nat(5),
    until: fc.option(fc.integer({ min: 10, max: 20 })),
    checks,
  }),
  { selector: ({ id }) => id, maxLength: 3 },
)
const taken = fc.uniqueArray(
  fc.record({
    what: fc.nat(100),
    kind: fc.constantFrom('scale' as const, 'thermometer' as const, 'volume_gauge' as const),
    at: fc.nat(20),
    amount: fc.option(fc.nat(10)),
  }),
  { selector: ({ what }) => what, maxLength: 8 },
)
const asSet = (of: readonly Taken<number>[], by: readonly CheckedInstrument[]) =>
  marksOfReadings(of, by).map(({ of: what, ...mark }) => ({ ...mark, of: [...what].sort((a, b) => a - b) }))

describe('marks', () => {
  it('are the same in whatever order checks and readings came in', () => {
    fc.assert(
      fc.property(taken, instruments, fc.infiniteStream(fc.nat()), (of, by, numbers) => {
        const shuffled = <Each>(all: readonly Each[]) =>
          all
            .map((each) => ({ each, by: Number(numbers.next().value) }))
            .sort((a, b) => a.by - b.by)
            .map(({ each }) => each)
        const other = shuffled(by).map((each) => ({ ...each, checks: shuffled(each.checks) }))
        expect(asSet(shuffled(of), other)).toEqual(asSet(of, by))
      }),
      { seed: 81 },
    )
  })

  it('are of whatever a failed check was next to, of every instrument that can have been used, and of nothing else', () => {
    fc.assert(
      fc.property(taken, instruments, (of, by) => {
        const marked = asSet(of, by).flatMap(({ instrument, of: what }) =>
          what.map((each) => `${each} ${instrument.id}`),
        )
        const expected = of.flatMap(({ what, kind, at, amount }) =>
          by
            .filter(
              (each) =>
                each.kind === kind &&
                each.from <= at &&
                (each.until === null || at <= each.until) &&
                !(amount !== null && each.most !== null && amount > each.most) &&
                each.checks.some(
                  (failed) =>
                    !failed.isGood &&
                    // No other check stands between the reading and it, on the reading's side.
                    !each.checks.some(
                      (other) =>
                        (at < other.at && other.at < failed.at) ||
                        (failed.at < other.at && other.at < at) ||
                        (other.at === at && failed.at !== at),
                    ),
                ),
            )
            .map(({ id }) => `${what} ${id}`),
        )
        expect(marked.sort()).toEqual(expected.sort())
      }),
      { seed: 82, numRuns: 500 },
    )
  })

  it('say whether nothing else can have been read with', () => {
    const scale = (id: string, most: number): CheckedInstrument => {
      const checked = [good(1), bad(9)]
      return { id, name: id, kind: 'scale', most, from: 0, until: null, checks: checked }
    }
    const of = [
      { what: 'light', kind: 'scale' as const, at: 5, amount: 100 },
      { what: 'heavy', kind: 'scale' as const, at: 5, amount: 900 },
      { what: 'weighed', kind: 'scale' as const, at: 5, amount: null },
      { what: 'warm', kind: 'thermometer' as const, at: 5, amount: null },
    ]
    const told = marksOfReadings(of, [scale('dose', 200), scale('bench', 5000)])
    expect(told.map(({ instrument, isOnlyOne, of: what }) => [instrument.id, isOnlyOne, what])).toEqual([
      ['bench', true, ['heavy']],
      ['bench', false, ['light', 'weighed']],
      ['dose', false, ['light', 'weighed']],
    ])
  })
})
