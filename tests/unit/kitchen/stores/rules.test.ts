import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  areAllergensSaid,
  checkedAtAfter,
  compositionState,
  figureDoubts,
  isPastBestBefore,
  isUnsafeRaw,
  isUsuallyDusty,
  measuredOfLot,
  priceStates,
  priceThatHolds,
} from '@/lib/kitchen/stores/rules'
import { forLong } from '@/tests/support/long'

const entry = (id: string, holdsFrom: string, enteredAt: string) => ({ id, holdsFrom, enteredAt: new Date(enteredAt) })

describe('the price that holds', () => {
  const spring = entry('1', '2026-03-01', '2026-02-20T08:00:00Z')
  const slip = entry('2', '2026-06-01', '2026-05-20T08:00:00Z')
  const mended = entry('3', '2026-06-01', '2026-05-21T08:00:00Z')
  const late = entry('4', '2026-01-01', '2026-07-01T08:00:00Z')
  const all = [mended, spring, late, slip]

  it('is none before the first began', () => expect(priceThatHolds([spring], '2026-02-28')).toBeUndefined())
  it('holds from its very day until the day before the next', () => {
    expect(priceThatHolds(all, '2026-03-01')).toBe(spring)
    expect(priceThatHolds(all, '2026-05-31')).toBe(spring)
  })
  it('is the later entered of two for one date', () => expect(priceThatHolds(all, '2026-06-01')).toBe(mended))
  it('is not one that was entered later for an earlier date', () =>
    expect(priceThatHolds(all, '2026-12-31')).toBe(mended))
  it('is decided by the time-ordered id when both came in one instant', () => {
    const [first, second] = [
      entry('a', '2026-06-01', '2026-05-20T08:00:00Z'),
      entry('b', '2026-06-01', '2026-05-20T08:00:00Z'),
    ]
    expect(priceThatHolds([second, first], '2026-06-01')).toBe(second)
  })
  it('says how each entry stands, latest first', () =>
    expect(priceStates(all, '2026-05-31').map(({ id, state }) => `${id} ${state}`)).toEqual([
      '3 coming',
      '2 replaced',
      '1 holds',
      '4 past',
    ]))

  it('does not hang on the order in which entries are read, and exactly one holds when one has begun', () => {
    const day = fc.integer({ min: 1, max: 28 }).map((date) => `2026-02-${String(date).padStart(2, '0')}`)
    const entries = fc
      .array(fc.record({ holdsFrom: day, minute: fc.integer({ min: 0, max: 3 }) }), { maxLength: 12 })
      .map((rows) =>
        rows.map(({ holdsFrom, minute }, index) =>
          entry(String(index).padStart(2, '0'), holdsFrom, `2026-01-01T00:0${minute}:00Z`),
        ),
      )
    fc.assert(
      fc.property(entries, day, (rows, asked) => {
        expect(priceThatHolds([...rows].reverse(), asked)?.id).toBe(priceThatHolds(rows, asked)?.id)
        const holding = priceStates(rows, asked).filter(({ state }) => state === 'holds')
        expect(holding).toHaveLength(rows.some(({ holdsFrom }) => holdsFrom <= asked) ? 1 : 0)
      }),
      { seed: 4471, numRuns: forLong(200, 4_000) },
    )
  })
})

describe('the check of allergens', () => {
  const checked = new Date('2026-01-05T08:00:00Z')
  const now = new Date('2026-03-02T04:00:00Z')
  const former = { allergens: ['gluten', 'milk'] as const, allergensCheckedAt: checked }
  it('stands for the list that was checked, in any order', () =>
    expect(checkedAtAfter(former, { allergens: ['milk', 'gluten'], check: 'as-before', now })).toBe(checked))
  it('does not stand for another list', () => {
    expect(checkedAtAfter(former, { allergens: ['gluten'], check: 'as-before', now })).toBe('check-again')
    expect(checkedAtAfter(former, { allergens: ['gluten', 'egg'], check: 'as-before', now })).toBe('check-again')
  })
  it('does not stand when there was none', () =>
    expect(
      checkedAtAfter({ allergens: [], allergensCheckedAt: null }, { allergens: [], check: 'as-before', now }),
    ).toBe('check-again'))
  it('is made or given up on demand', () => {
    expect(checkedAtAfter(former, { allergens: [], check: 'checked-now', now })).toBe(now)
    expect(checkedAtAfter(former, { allergens: ['gluten', 'milk'], check: 'unknown', now })).toBeNull()
  })
})

describe('the composition', () => {
  it('is unknown, known in part, or stated', () => {
    expect(compositionState([])).toBe('unknown')
    expect(compositionState([{ figure: 'water' }])).toBe('in-part')
    const all = (['water', 'protein', 'fat', 'carbohydrate', 'sugars', 'fibre', 'salt'] as const).map((figure) => ({
      figure,
    }))
    expect(compositionState(all)).toBe('stated')
  })
  // USDA SR28, 20129 (bread flour) and 01077 (whole milk, whose sugars exceed its carbohydrate).
  it('is doubted where it cannot be, and where tables too are odd', () => {
    expect(
      figureDoubts({ water: 13.36, protein: 11.98, fat: 1.66, carbohydrate: 72.53, sugars: 0.31, fibre: 2.4 }),
    ).toEqual([])
    expect(figureDoubts({ water: 88.13, protein: 3.15, fat: 3.25, carbohydrate: 4.8, sugars: 5.05, fibre: 0 })).toEqual(
      ['sugars-above-carbohydrate'],
    )
    expect(figureDoubts({ water: 83.36, carbohydrate: 72.53 })).toEqual(['above-100'])
    expect(figureDoubts({ carbohydrate: 5, fibre: 6 })).toEqual(['fibre-above-carbohydrate'])
  })
  it('is not doubted for what is unknown', () => expect(figureDoubts({ sugars: 50, fibre: 20 })).toEqual([]))
})

it('cautions of dust and of raw dough go by kind', () => {
  expect((['flour', 'malt', 'improver'] as const).every(isUsuallyDusty)).toBe(true)
  expect(isUsuallyDusty('water')).toBe(false)
  expect([isUnsafeRaw('flour'), isUnsafeRaw('egg'), isUnsafeRaw('salt')]).toEqual([true, true, false])
})

describe('a lot', () => {
  it('is not past its best-before day on that day, and is on the next', () => {
    expect(['2026-02-28', '2026-03-01', '2026-03-02'].map((day) => isPastBestBefore('2026-03-01', day))).toEqual([
      false,
      false,
      true,
    ])
    expect(isPastBestBefore(null, '2099-12-31')).toBe(false)
  })

  it('may go into a dough when anything was said of its allergens: silence is not none', () => {
    const checked = new Date('2026-03-01T08:00:00Z')
    expect(areAllergensSaid({ allergens: [], allergensCheckedAt: null })).toBe(false)
    expect(areAllergensSaid({ allergens: [], allergensCheckedAt: checked })).toBe(true)
    expect(areAllergensSaid({ allergens: ['milk'], allergensCheckedAt: null })).toBe(true)
  })

  it('has what was measured of it whole or not at all', () => {
    const whole = { strengthOf: 'Falling number', strength: 0, strengthUnit: 's' }
    expect(measuredOfLot(whole)).toEqual({ of: 'Falling number', value: 0, unit: 's' })
    for (const name of ['strengthOf', 'strength', 'strengthUnit'] as const)
      expect(measuredOfLot({ ...whole, [name]: null })).toBeNull()
  })
})
