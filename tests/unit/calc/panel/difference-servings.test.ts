import { expect, test } from 'vitest'
import { differenceServings } from '@/lib/calc/panel/difference-servings'

const samples = ['a', 'b'].flatMap((sample) => ['1', '2'].map((batch) => ({ sample, batch, allergens: 'wheat' })))

/** How often each order is given. */
function ordersOf(kind: Parameters<typeof differenceServings>[0]['test'], tasters: number): Record<string, number> {
  const { servings } = differenceServings({ seed: 's', test: kind, samples, tasters })
  const counts: Record<string, number> = {}
  for (let taster = 1; taster <= tasters; taster++) {
    const order = servings
      .filter((serving) => serving.taster === taster)
      .map(({ sample }) => sample)
      .join('')
    counts[order] = (counts[order] ?? 0) + 1
  }
  return counts
}

test('each order of the test is given equally often', () => {
  expect(ordersOf('triangle', 18)).toEqual({ aab: 3, aba: 3, baa: 3, bba: 3, bab: 3, abb: 3 })
  // the first is the reference, each sample in turn
  expect(ordersOf('duo-trio', 8)).toEqual({ aab: 2, aba: 2, bab: 2, bba: 2 })
  expect(ordersOf('three-afc', 6)).toEqual({ aab: 2, aba: 2, baa: 2 })
  expect(ordersOf('paired', 4)).toEqual({ ab: 2, ba: 2 })
  expect(ordersOf('paired-two-sided', 4)).toEqual({ ab: 2, ba: 2 })
})

test('one sample and three are refused', () => {
  expect(() => differenceServings({ seed: 's', test: 'triangle', samples: samples.slice(0, 2), tasters: 6 })).toThrow(
    'number-of-samples',
  )
  const third = { sample: 'c', batch: '1', allergens: 'none' }
  expect(() => differenceServings({ seed: 's', test: 'triangle', samples: [...samples, third], tasters: 6 })).toThrow(
    'number-of-samples',
  )
})

test('more tasters than there are codes for are refused', () => {
  expect(() => differenceServings({ seed: 's', test: 'triangle', samples, tasters: 301 })).toThrow('tasters')
})
