import { labFromSrgb } from '@/lib/calc/colour/lab-from-srgb'
import { publishedCheck } from '@/tests/support/published-check'

/** Red, green, blue; then lightness, a and b by the matrix of seven digits. */
const colours = [
  { red: 255, green: 0, blue: 0, lightness: 53.241, a: 80.092, b: 67.203 },
  { red: 181, green: 120, blue: 62, lightness: 55.692, a: 18.215, b: 40.865 },
] as const

for (const { red, green, blue, ...expected } of colours) {
  for (const axis of ['lightness', 'a', 'b'] as const) {
    publishedCheck({
      id: 'P-8.6',
      of: ['colour/lab-from-srgb'],
      what: `${axis} of sRGB ${red}, ${green}, ${blue}`,
      source: 'IEC 61966-2-1 (sRGB), white D65; CIE 15 (CIELAB)',
      status: 'published inputs',
      expected: expected[axis],
      got: () => labFromSrgb({ red, green, blue })[axis],
      tolerance: { absolute: 0.02 },
      why: 'matrices of four and of seven digits differ by that much',
    })
  }
}
