import { doughYield } from '@/lib/calc/formula/dough-yield'
import { hydration } from '@/lib/calc/formula/hydration'
import { line, straightDough } from '@/tests/support/formula-samples'
import { publishedCheck } from '@/tests/support/published-check'

const plain = straightDough(line('flour', 'flour', 500), line('water', 'water', 300))

publishedCheck({
  id: 'P-2.2',
  of: ['formula/dough-yield'],
  what: 'dough yield of 500 g flour and 300 g water',
  source: 'German bread weblog, glossary, Teigausbeute',
  status: 'published',
  expected: 160,
  got: () => doughYield(plain).netPct,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-2.2',
  of: ['formula/hydration'],
  what: 'hydration is dough yield less 100',
  source: 'German bread weblog, glossary, Teigausbeute',
  status: 'published',
  expected: 60,
  got: () => hydration(plain, 'poured-liquids').pctFlour,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
