import fc from 'fast-check'
import { expect, it } from 'vitest'
import { turnsOf } from '@/lib/kitchen/batches/turns-of'

const batches = ['a', 'b', 'c', 'd'].map((id, i) => ({ id, plannedOrder: i + 1 }))
const swap = (batchId: string, otherBatchId: string) => ({ batchId, otherBatchId })

it('is the planned place until two exchange theirs, one after the other', () => {
  expect([...turnsOf(batches, [])]).toEqual([
    ['a', 1],
    ['b', 2],
    ['c', 3],
    ['d', 4],
  ])
  expect([...turnsOf(batches, [swap('a', 'b'), swap('a', 'd')]).values()]).toEqual([4, 1, 3, 2])
})

it('keeps every place for one batch, whatever is exchanged how often', () => {
  const id = fc.constantFrom('a', 'b', 'c', 'd', 'gone')
  fc.assert(
    fc.property(fc.array(fc.tuple(id, id)), (pairs) => {
      const turns = turnsOf(
        batches,
        pairs.map(([one, other]) => swap(one, other)),
      )
      expect([...turns.values()].sort()).toEqual([1, 2, 3, 4])
    }),
  )
})
