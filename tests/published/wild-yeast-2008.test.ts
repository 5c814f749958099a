import { finalDoughView } from '@/lib/calc/formula/final-dough-view'
import { formulaTotals } from '@/lib/calc/formula/formula-totals'
import type { Formula } from '@/lib/calc/formula/types'
import { line } from '@/tests/support/formula-samples'
import { publishedCheck } from '@/tests/support/published-check'

const source = "Wild Yeast weblog, Baker's percentage tutorial, part 4, 2008"

const poolishBread: Formula = {
  stages: [
    { id: 'dough', kind: 'final-dough' },
    { id: 'poolish', kind: 'pre-ferment' },
  ],
  lines: [
    line('flour', 'flour', 900),
    line('water', 'water', 468),
    line('yeast', 'yeast', 9),
    line('salt', 'salt', 27),
    line('poolish flour', 'flour', 468, null, { stageId: 'poolish' }),
    line('poolish water', 'water', 468, null, { stageId: 'poolish' }),
    line('poolish yeast', 'yeast', 0.3, null, { stageId: 'poolish' }),
  ],
}
const final = (id: string) =>
  finalDoughView(poolishBread).lines.find((l) => l.lineId === id)?.pctFinalFlour ?? Number.NaN
const overall = (...ids: string[]) =>
  formulaTotals(poolishBread)
    .lines.filter((l) => ids.includes(l.lineId))
    .reduce((sum, l) => sum + l.pctFlour, 0)
const printed = 'the source prints whole percentages, and 936 g for a poolish whose parts sum to 936.3 g'

for (const [what, expected, got] of [
  ['final-dough view: water', 52, () => final('water')],
  ['final-dough view: yeast', 1, () => final('yeast')],
  ['final-dough view: salt', 3, () => final('salt')],
  ['final-dough view: poolish', 104, () => finalDoughView(poolishBread).stages[0]?.pctFinalFlour ?? Number.NaN],
  ['final-dough view: total', 260, () => finalDoughView(poolishBread).totalPctFinalFlour],
] as const) {
  publishedCheck({
    id: 'P-1.1',
    of: ['formula/final-dough-view'],
    what,
    source,
    status: 'published',
    expected,
    got,
    tolerance: { absolute: 0.05 },
    why: printed,
  })
}

for (const [what, expected, got] of [
  ['overall view: water', 68.42, () => overall('water', 'poolish water')],
  ['overall view: yeast', 0.68, () => overall('yeast', 'poolish yeast')],
  ['overall view: salt', 1.974, () => overall('salt')],
  ['overall view: total', 171.07, () => formulaTotals(poolishBread).totalPctFlour],
  ['overall view: pre-fermented flour', 34.21, () => 100 * formulaTotals(poolishBread).preFermentedFlourShare],
] as const) {
  publishedCheck({
    id: 'P-1.1',
    of: ['formula/formula-totals'],
    what,
    source,
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute: 0.005 },
    why: 'half of the last digit worked out',
  })
}
