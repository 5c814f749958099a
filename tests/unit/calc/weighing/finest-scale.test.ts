import { expect, test } from 'vitest'
import { finestScale } from '@/lib/calc/weighing/finest-scale'

const scales = [
  { id: 'fine', resolutionG: 0.1, capacityG: 100, uncertaintyG: 0.05 },
  { id: 'coarse', resolutionG: 1, capacityG: 1000, uncertaintyG: 0.5 },
]

test('a mass goes on the finest scale that carries it, up to its capacity', () => {
  expect(finestScale(scales, 100)).toEqual({ scale: scales[0], relative: 0.0005 })
  expect(finestScale(scales, 100.1)?.scale.id).toBe('coarse')
  expect(finestScale(scales, 1000.1)).toBeNull()
})
