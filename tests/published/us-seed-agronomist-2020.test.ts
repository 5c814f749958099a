import { blendFallingNumber } from '@/lib/calc/flour/blend-falling-number'
import { blendToFallingNumber } from '@/lib/calc/flour/blend-to-falling-number'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'US seed-company agronomist, 2020, after USDA grain inspection'
const blend = (...seconds: number[]) =>
  blendFallingNumber({ parts: seconds.map((fallingNumberS) => ({ massG: 500, fallingNumberS })) })
const wanted = () =>
  blendToFallingNumber({ firstFallingNumberS: 400, secondFallingNumberS: 220, wantedFallingNumberS: 300, massG: 1000 })

for (const [what, expected, got, absolute] of [
  ['liquefaction number of 400 s (printed 17.1)', 17.143, () => blend(400).liquefactionNumber, 5e-4],
  ['liquefaction number of 220 s (printed 35.3)', 35.294, () => blend(220).liquefactionNumber, 5e-4],
  ['their mean, equal parts (printed 26.2)', 26.218, () => blend(400, 220).liquefactionNumber, 6e-4],
  ['falling number of that blend, s (printed 279), and not 310', 278.85, () => blend(400, 220).fallingNumberS, 6e-3],
] as const) {
  publishedCheck({
    id: 'Q-3.1',
    of: ['flour/blend-falling-number'],
    what,
    source,
    status: 'published',
    expected,
    got,
    tolerance: { absolute },
    why: 'half of the last digit worked out',
  })
}
for (const [what, expected, got, absolute] of [
  ['liquefaction number wanted for 300 s', 24, () => wanted().wantedLiquefactionNumber, 1e-9],
  ['part of the lot of 220 s that gives it, %', 37.778, () => wanted().secondPartPct, 5e-4],
] as const) {
  publishedCheck({
    id: 'Q-3.2',
    of: ['flour/blend-to-falling-number'],
    what,
    source,
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute },
    why: 'half of the third decimal',
  })
}
