import { YEAST_MAXIMUM_TEMP_C, YEAST_MINIMUM_TEMP_C, YEAST_OPTIMUM_TEMP_C } from '@/lib/calc/fermentation/constants'
import { relativeRateShare } from '@/lib/calc/fermentation/relative-rate'
import { publishedCheck } from '@/tests/support/published-check'

const cardinal = {
  minimumTempC: YEAST_MINIMUM_TEMP_C,
  optimumTempC: YEAST_OPTIMUM_TEMP_C,
  maximumTempC: YEAST_MAXIMUM_TEMP_C,
}
const source =
  'L. Rosso, J. R. Lobry, J. P. Flandrois (1993), J. theor. Biol. 162: 447–463, with optimum and maximum of Z. Salvado et al. (2011), doi 10.1128/AEM.01861-10'

for (const [tempC, expected] of [
  [10, 0.13522],
  [20, 0.59649],
  [25, 0.83015],
  [27, 0.90429],
  [30, 0.98016],
  [32.3, 1],
  [35, 0.96819],
  [40, 0.70162],
  [45.4, 0],
  [50, 0],
] as const) {
  publishedCheck({
    id: 'P-7.2',
    of: ['fermentation/relative-rate'],
    what: `growth of yeast at ${tempC} °C as a share of its best, minimum taken at 2.8 °C`,
    source,
    status: 'published inputs (the minimum is the middle of 1.3 to 4.3 °C, assumed)',
    expected,
    got: () => relativeRateShare({ tempC, ...cardinal }),
    tolerance: { absolute: 5e-6 },
    why: 'half of the fifth decimal',
  })
}
for (const [what, expected, got] of [
  ['optimum', 32.3, YEAST_OPTIMUM_TEMP_C],
  ['maximum', 45.4, YEAST_MAXIMUM_TEMP_C],
  ['middle of the minimum’s range, 1.3 to 4.3', 2.8, YEAST_MINIMUM_TEMP_C],
] as const) {
  publishedCheck({
    id: 'P-7.1',
    of: ['fermentation/relative-rate'],
    what: `Saccharomyces cerevisiae, ${what}, °C`,
    source: 'Z. Salvado et al. (2011), Applied and Environmental Microbiology, doi 10.1128/AEM.01861-10',
    status: 'published',
    expected,
    got: () => got,
    tolerance: { relative: 1e-12 },
    why: 'the printed figure itself',
  })
}
