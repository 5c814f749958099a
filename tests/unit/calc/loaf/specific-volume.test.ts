import { expect, test } from 'vitest'
import { specificVolumeMlPerG } from '@/lib/calc/loaf/specific-volume'

test('volume over mass', () => expect(specificVolumeMlPerG({ volumeMl: 2000, massG: 500 })).toBe(4))
test('a loaf without mass is refused', () =>
  expect(() => specificVolumeMlPerG({ volumeMl: 2000, massG: 0 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
