import { differenceServings } from '@/lib/calc/panel/difference-servings'
import { publishedCheck } from '@/tests/support/published-check'

const samples = ['control', 'malt'].flatMap((sample) =>
  ['1', '2'].map((batch) => ({ sample, batch, allergens: 'wheat' })),
)
const codes = () =>
  differenceServings({ seed: 's', test: 'triangle', samples, tasters: 300 }).servings.map(({ code }) => Number(code))

const check = (what: string, expected: number, got: () => number) =>
  publishedCheck({
    id: 'P-9.9',
    of: ['panel/difference-servings'],
    what,
    source: 'three-digit codes, 900 of them, new for each taster and session',
    status: 'common practice, no source',
    expected,
    got,
    tolerance: 0,
    why: 'a count',
  })

check('300 tasters of three portions use all 900 codes, none twice', 900, () => new Set(codes()).size)
check('the lowest code', 100, () => Math.min(...codes()))
check('the highest code', 999, () => Math.max(...codes()))
