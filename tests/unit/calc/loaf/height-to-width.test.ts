import { expect, test } from 'vitest'
import { heightToWidth } from '@/lib/calc/loaf/height-to-width'

test('height over width', () => expect(heightToWidth({ heightMm: 75, widthMm: 150 })).toBe(0.5))
test('no width is refused', () =>
  expect(() => heightToWidth({ heightMm: 1, widthMm: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' })))
