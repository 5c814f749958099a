import { expect, it } from 'vitest'
import { takenOutCounted } from '@/lib/kitchen/results/taken-out-counted'
import type { MeasuredBatch } from '@/lib/kitchen/results/trial-facts'

const dough = (
  code: string,
  plannedOrder: number,
  state: MeasuredBatch['state'],
  value: number | null = 400,
  arm = 0,
) =>
  ({ code, arm, day: 1, plannedOrder, state, pieces: [{ piece: 1, level: null, value }] }) as unknown as MeasuredBatch
const counted = (batches: MeasuredBatch[], ofKind: number) => {
  const taken = takenOutCounted(batches, ofKind)
  return (
    taken && { codes: taken.codes, counted: taken.batches.filter((b) => b.state === 'measured').map((b) => b.code) }
  )
}

it('is nothing where no dough was taken out after it was read', () => {
  expect(counted([dough('101', 1, 'measured'), dough('102', 2, 'lost', null)], 1)).toBeNull()
})

it('counts those that were taken out after they were read', () => {
  const doughs = [dough('101', 1, 'set_aside'), dough('102', 2, 'measured', 400, 1)]
  expect(counted(doughs, 1)).toEqual({ codes: ['101'], counted: ['101', '102'] })
})

it('leaves out what was baked again for them, and nothing that was baked again for others', () => {
  const again = [dough('101', 1, 'set_aside'), dough('102', 2, 'measured', 400, 1), dough('103', 3, 'measured')]
  expect(counted(again, 1)?.counted).toEqual(['101', '102'])
  const two = [
    dough('101', 1, 'set_aside'),
    dough('102', 2, 'lost', null),
    dough('103', 3, 'measured'),
    dough('104', 4, 'measured'),
  ]
  expect(counted(two, 2)?.counted).toEqual(['101', '103'])
})
