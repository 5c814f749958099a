import { answerOf } from '@/tests/support/answer-of'
import { publishedCheck } from '@/tests/support/published-check'

const inC = (reading: number) =>
  Number(answerOf('temperature/temperature-reading', { temperaturesIn: 'fahrenheit', reading }).readingTempC)

// Its rule for rounding a converted reading: to the nearest half of a degree Celsius.
for (const [f, c] of [
  [78, 25.5],
  [76, 24.5],
] as const)
  publishedCheck({
    id: 'Q-12.6',
    of: ['temperature/temperature-reading'],
    what: `a dough of ${f} °F, to the nearest 0.5 °C`,
    source: 'NIST, rounding of converted readings of temperature',
    status: 'published inputs',
    expected: c,
    got: () => Math.round(inC(f) * 2) / 2,
    tolerance: { absolute: 1e-12 },
    why: 'halves of a degree are exact',
  })

publishedCheck({
  id: 'Q-12.6',
  of: ['temperature/temperature-reading'],
  what: 'boiling water in °F',
  source: 'NIST, conversion of temperatures: t/°C = (t/°F − 32)/1.8',
  status: 'from memory',
  expected: 212,
  got: () =>
    Number(answerOf('temperature/temperature-reading', { temperaturesIn: 'celsius', reading: 100 }).readingTempF),
  tolerance: { absolute: 1e-12 },
  why: 'exact by definition',
})
