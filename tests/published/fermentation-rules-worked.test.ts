import { minutesAtTemperature } from '@/lib/calc/fermentation/minutes-at-temperature'
import { minutesWhileCooling } from '@/lib/calc/fermentation/minutes-while-cooling'
import { yeastForTime } from '@/lib/calc/fermentation/yeast-for-time'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  'Q10 of 2, 10 % for one °C (US baking trade magazine), growth model of Rosso et al. (1993): the rules side by side'
const byRule = (rules: readonly { rule: string; minutes: number; yeastFactor?: number }[], rule: string) =>
  rules.find((one) => one.rule === rule)

publishedCheck({
  id: 'Q-4.2',
  of: ['fermentation/yeast-for-time'],
  what: 'yeast × time: 1.2 % for 90 min, wanted 150 min',
  source: 'rule of the trade',
  status: 'common practice, no source',
  expected: 0.72,
  got: () => yeastForTime({ yeastPctFlour: 1.2, atMin: 90, wantedMin: 150 }).yeastPctFlour,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})

const moved = () => minutesAtTemperature({ minutes: 75, tempC: 26, otherTempC: 22 })
for (const [rule, minutes, factor] of [
  ['q10-of-2', 98.963, 1.3195],
  ['ten-pct-per-degree', 109.81, 1.4642],
  ['cardinal-temperatures', 93.729, 1.2497],
] as const) {
  const common = {
    id: 'Q-4.3',
    of: ['fermentation/minutes-at-temperature'] as const,
    source,
    status: 'published inputs',
  }
  publishedCheck({
    ...common,
    what: `75 min at 26 °C moved to 22 °C, ${rule}`,
    expected: minutes,
    got: () => byRule(moved().rules, rule)?.minutes ?? Number.NaN,
    tolerance: { relative: 5e-5 },
    why: 'worked to five digits',
  })
  publishedCheck({
    ...common,
    what: `yeast for the same 75 min, ${rule}`,
    expected: factor,
    got: () => byRule(moved().rules, rule)?.yeastFactor ?? Number.NaN,
    tolerance: { relative: 1e-4 },
    why: 'worked to five digits, 10 % a degree with its Q10 rounded to 2.594',
  })
}

const retarded = () => minutesAtTemperature({ minutes: 960, tempC: 4, otherTempC: 27 })
for (const [rule, expected] of [
  ['q10-of-2', 194.94],
  ['ten-pct-per-degree', 107.19],
  ['cardinal-temperatures', 4.471],
] as const) {
  publishedCheck({
    id: 'Q-4.4',
    of: ['fermentation/minutes-at-temperature'],
    what: `16 h at 4 °C as minutes at 27 °C, ${rule}`,
    source,
    status: 'worked',
    expected,
    got: () => byRule(retarded().rules, rule)?.minutes ?? Number.NaN,
    tolerance: { relative: 2e-4 },
    why: 'the model is worked to four digits',
  })
}
publishedCheck({
  id: 'Q-4.4',
  of: ['fermentation/minutes-at-temperature'],
  what: 'what is said of 4 °C',
  source,
  status: 'worked',
  expected: 'rules-differ-in-the-cold',
  got: () => retarded().warnings[0],
})

const cooled = () =>
  minutesWhileCooling({ startTempC: 26, cabinetTempC: 4, timeConstantMin: 90, minutes: 720, referenceTempC: 27 })
for (const [rule, expected] of [
  ['q10-of-2', 189.64],
  ['ten-pct-per-degree', 120.62],
  ['cardinal-temperatures', 65.62],
] as const) {
  publishedCheck({
    id: 'Q-4.5',
    of: ['fermentation/minutes-while-cooling'],
    what: `26 to 4 °C with a time constant of 90 min, 12 h, as minutes at 27 °C, ${rule}`,
    source,
    status: 'numerical integration',
    expected,
    got: () => byRule(cooled().rules, rule)?.minutes ?? Number.NaN,
    tolerance: { relative: 1e-3 },
    why: 'the tolerance of the worked integral',
  })
}
publishedCheck({
  id: 'Q-4.5',
  of: ['fermentation/minutes-while-cooling'],
  what: 'the same at 4 °C from the start, Q10 of 2',
  source,
  status: 'worked',
  expected: 146.21,
  got: () =>
    byRule(
      minutesWhileCooling({ startTempC: 4, cabinetTempC: 4, timeConstantMin: 90, minutes: 720, referenceTempC: 27 })
        .rules,
      'q10-of-2',
    )?.minutes ?? Number.NaN,
  tolerance: { relative: 5e-5 },
  why: 'worked to five digits',
})
