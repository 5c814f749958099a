import fc from 'fast-check'
import { expect, test } from 'vitest'
import { codedServings } from '@/lib/calc/panel/coded-servings'

const batches = (sample: string, count: number) =>
  Array.from({ length: count }, (_, i) => ({ sample, batch: `${sample}${i + 1}`, allergens: 'wheat' }))
const samples = [...batches('a', 2), ...batches('b', 2)]
const orders = [
  ['a', 'b'],
  ['b', 'a'],
]

test('every order is given equally often in whole rounds, and every code once', () => {
  fc.assert(
    fc.property(fc.string(), fc.integer({ min: 1, max: 40 }), (seed, rounds) => {
      const { servings, warnings } = codedServings({ seed, orders, samples, tasters: 2 * rounds })
      expect(servings.filter(({ place, sample }) => place === 1 && sample === 'a')).toHaveLength(rounds)
      expect(new Set(servings.map(({ code }) => code)).size).toBe(4 * rounds)
      expect(warnings).toEqual([])
    }),
  )
})

test('batches come in turn, and a taster has one batch of a sample throughout', () => {
  const { servings } = codedServings({ seed: 's', orders: [['a', 'a', 'b']], samples, tasters: 10 })
  for (let taster = 1; taster <= 10; taster++) {
    const own = servings.filter((serving) => serving.taster === taster && serving.sample === 'a')
    expect(new Set(own.map(({ batch }) => batch)).size).toBe(1)
  }
  expect(servings.filter(({ batch }) => batch === 'a1')).toHaveLength(10)
  expect(servings.filter(({ batch }) => batch === 'b2')).toHaveLength(5)
})

test('the seed decides', () => {
  const of = (seed: string) => codedServings({ seed, orders, samples, tasters: 20 })
  expect(of('s')).toEqual(of('s'))
  expect(of('s').servings).not.toEqual(of('t').servings)
})

test('the key shows allergens beside each code and carries its cautions every time', () => {
  const { servings, cautions } = codedServings({
    seed: 's',
    orders,
    samples: [...batches('a', 2), { sample: 'b', batch: 'b1', allergens: 'wheat, milk' }],
    tasters: 3,
  })
  expect(servings.every(({ sample, allergens }) => allergens === (sample === 'b' ? 'wheat, milk' : 'wheat'))).toBe(true)
  expect(cautions).toEqual(['baked-only', 'ask-allergens-first', 'key-with-leader'])
})

test('a single batch and an uneven round are named', () => {
  const { warnings } = codedServings({
    seed: 's',
    orders,
    samples: [...batches('a', 1), ...batches('b', 2)],
    tasters: 3,
  })
  expect(warnings).toEqual([
    { code: 'one-batch', sample: 'a' },
    { code: 'orders-not-even', sample: null },
  ])
})

test('allergens left open, a batch named twice, no tasters and more portions than codes are refused', () => {
  const asked = { seed: 's', orders, samples, tasters: 4 }
  expect(() => codedServings({ ...asked, samples: [{ sample: 'a', batch: '1', allergens: '  ' }] })).toThrow(
    'allergens-not-stated',
  )
  expect(() => codedServings({ ...asked, samples: [...samples, samples[0]!] })).toThrow('duplicate')
  for (const tasters of [0, -1, 451, 1.5, NaN]) expect(() => codedServings({ ...asked, tasters })).toThrow('tasters')
  expect(() => codedServings({ ...asked, orders: [] })).toThrow('empty')
})
