import fc from 'fast-check'
import { expect, test } from 'vitest'
import { labFromSrgb } from '@/lib/calc/colour/lab-from-srgb'

const channel = fc.double({ min: 0, max: 255, noNaN: true })

test('black and white are the ends of lightness, without hue', () => {
  const [black, white] = [0, 255].map((value) => labFromSrgb({ red: value, green: value, blue: value }))
  expect(black).toEqual({ lightness: 0, a: 0, b: 0 })
  expect(white).toEqual({ lightness: 100, a: 0, b: 0 })
})

test('greys have no hue and get lighter with the value', () => {
  fc.assert(
    fc.property(channel, channel, (one, other) => {
      const [first, second] = [one, other].map((value) => labFromSrgb({ red: value, green: value, blue: value }))
      expect(Math.hypot(first!.a, first!.b)).toBeLessThan(1e-9)
      if (one < other) expect(second!.lightness).toBeGreaterThanOrEqual(first!.lightness)
    }),
  )
})

test('every colour of the screen is a colour of CIELAB, and lighter where a channel is raised', () => {
  fc.assert(
    fc.property(channel, channel, channel, (red, green, blue) => {
      const { lightness, a, b } = labFromSrgb({ red, green, blue })
      expect(lightness).toBeGreaterThanOrEqual(0)
      expect(lightness).toBeLessThanOrEqual(100)
      expect(Math.max(Math.abs(a), Math.abs(b))).toBeLessThan(130)
      expect(labFromSrgb({ red: 255, green, blue }).lightness).toBeGreaterThanOrEqual(lightness - 1e-9)
    }),
  )
})

test('the two pieces of each curve meet', () => {
  const around = (value: number) => labFromSrgb({ red: value, green: value, blue: value }).lightness
  // the sRGB curve bends at 0.04045 of full, that of CIELAB where lightness is 8
  expect(Math.abs(around(0.04045 * 255 + 1e-6) - around(0.04045 * 255 - 1e-6))).toBeLessThan(1e-4)
  expect(Math.abs(around(24.8001) - around(24.8))).toBeLessThan(1e-3)
})

test('a channel beyond 255, below 0 or not finite is refused at its field', () => {
  expect(() => labFromSrgb({ red: 256, green: 0, blue: 0 })).toThrow('red')
  expect(() => labFromSrgb({ red: 0, green: -1, blue: 0 })).toThrow('green')
  expect(() => labFromSrgb({ red: 0, green: 0, blue: NaN })).toThrow('not-finite')
})
