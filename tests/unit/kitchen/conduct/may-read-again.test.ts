import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mayReadAgain } from '@/lib/kitchen/conduct/may-read-again.input'
import { settleRepeats } from '@/lib/kitchen/readings/settle-repeats.input'
import { takesRepeat } from '@/lib/kitchen/readings/takes-repeat.input'

describe('whether a place is read again', () => {
  it('is asked by the plan, up to its number', () => {
    const taken = [1, 2, 3].map((repeat) => mayReadAgain({ needs: 'repeat', repeat, repeats: 2 }))
    expect(taken).toEqual([true, true, false])
  })

  it('is asked once more by two that disagree', () => {
    const taken = [1, 2, 3, 4].map((repeat) => mayReadAgain({ needs: 'third', repeat, repeats: 2 }))
    expect(taken).toEqual([true, true, true, false])
    expect(mayReadAgain({ needs: 'third', repeat: 4, repeats: 4 })).toBe(true)
  })

  it('is not asked by a place that is complete, whatever number it is sent under', () => {
    for (const repeat of [1, 2, 3, 4, 20]) expect(mayReadAgain({ needs: null, repeat, repeats: 5 })).toBe(false)
  })
})

describe('a place of a dough', () => {
  const measure = { repeats: 2, repeatLimit: 30 }

  it('takes what the plan asks for, a third where two disagree, and no fourth', () => {
    expect(takesRepeat(1, measure, [])).toBe(true)
    expect(takesRepeat(2, measure, [{ repeat: 1, value: 1900 }])).toBe(true)
    const agreed = [
      { repeat: 1, value: 1900 },
      { repeat: 2, value: 1910 },
    ]
    expect(takesRepeat(3, measure, agreed)).toBe(false)
    const disagreed = [
      { repeat: 1, value: 1900 },
      { repeat: 2, value: 1990 },
    ]
    expect(takesRepeat(3, measure, disagreed)).toBe(true)
    expect(takesRepeat(4, measure, disagreed)).toBe(false)
    expect(takesRepeat(4, measure, [...disagreed, { repeat: 3, value: 1940 }])).toBe(false)
    expect(takesRepeat(2, { repeats: 1, repeatLimit: null }, [{ repeat: 1, value: 412 }])).toBe(false)
  })

  it('keeps its figure once it is settled, whoever sends what, in whatever order', () => {
    const sent = fc.array(
      fc.record({ repeat: fc.integer({ min: 1, max: 6 }), value: fc.double({ min: 1000, max: 3000, noNaN: true }) }),
      { maxLength: 14 },
    )
    const measures = fc.record({
      repeats: fc.integer({ min: 1, max: 5 }),
      repeatLimit: fc.option(fc.double({ min: 0, max: 400, noNaN: true })),
    })
    fc.assert(
      fc.property(measures, sent, (asked, readings) => {
        const held: { repeat: number; value: number }[] = []
        let figure: number | null = null
        for (const reading of readings) {
          const isFree = held.every(({ repeat }) => repeat !== reading.repeat)
          if (isFree && takesRepeat(reading.repeat, asked, held)) held.push(reading)
          if (held.length === 0) continue
          const values = [...held].sort((a, b) => a.repeat - b.repeat).map(({ value }) => value)
          const now = settleRepeats({ values, ...asked })
          if (figure !== null) expect(now.value).toBe(figure)
          if (now.needs === null) figure = now.value
          expect(held.length).toBeLessThanOrEqual(Math.max(asked.repeats, 3))
        }
      }),
    )
  })

  it('is never stuck: what it asks for is taken', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.array(fc.double({ min: 1000, max: 3000, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (repeats, values) => {
          const held: { repeat: number; value: number }[] = []
          for (const [at, value] of values.entries()) {
            const settled =
              held.length > 0
                ? settleRepeats({ values: held.map((each) => each.value), repeats, repeatLimit: null })
                : null
            if (settled && settled.needs === null) return
            expect(takesRepeat(at + 1, { repeats, repeatLimit: null }, held)).toBe(true)
            held.push({ repeat: at + 1, value })
          }
        },
      ),
    )
  })
})
