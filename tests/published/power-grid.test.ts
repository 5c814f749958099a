import { describe } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'
import { publishedCheck } from '@/tests/support/published-check'
import rows from './data/power-grid.json'

// The entries themselves are run, so that their shapes are checked too.
const ids = ['plan/paired-size', 'plan/batches-size', 'plan/dunnett-power', 'plan/dunnett-size'] as const

function figures(id: (typeof ids)[number], inputs: unknown): Record<string, unknown> {
  const entry = catalogue.find((each) => each.id === id)!
  const run = entry.run as (q: unknown) => Record<string, unknown>
  return run(entry.input.parse(inputs))
}

describe.each(rows.map((row, i) => ({ ...row, i })))('$op $i', (row) => {
  const id = ids.find((each) => each === `plan/${row.op}`)!
  for (const [name, value] of Object.entries(row.expected)) {
    // of a list of arms the last; a count that is met exactly tells nothing that its root does not
    const expected = [value].flat().at(-1) ?? NaN
    publishedCheck({
      of: [id],
      what: `${name} for ${JSON.stringify(row.inputs)}`,
      source: 'SciPy 1.17.1, NumPy 2.4.6: nct, brentq, Gauss-Legendre, data/power-grid.py',
      status: 'computed',
      expected,
      got: () => Number([figures(id, row.inputs)[name]].flat().at(-1)),
      tolerance: 1e-8,
      why: 'root searches on both sides, 1e-10 each; the noncentral t of the reference carries about 1e-10',
    })
  }
})
