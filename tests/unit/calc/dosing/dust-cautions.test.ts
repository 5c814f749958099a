import { expect, test } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'
import { DUST_CAUTIONS } from '@/lib/calc/dosing/dust-cautions'
import type { CalcEntry } from '@/lib/calc/entry'

const entries: readonly CalcEntry[] = catalogue

/** Its answer is a mass or a dose of something that dusts: a product with an active substance, malt, gluten, a premix. */
function weighsDust({ id, run, example }: CalcEntry): boolean {
  return (
    /malt-to|gluten-to|premix/.test(id) ||
    Object.keys(run(example) as object).some((field) => /^(product|gluten|premix|malt)\w*(G|Mg)$/.test(field)) ||
    id === 'dosing/equal-active-mass'
  )
}

test('whatever ends in malt, gluten, an enzyme or a premix being weighed has the caution about dust', () => {
  const dusty = entries.filter(weighsDust)
  expect(dusty.map(({ id }) => id)).toEqual(
    expect.arrayContaining([
      'weighing/plan-premix',
      'dosing/dose-chain',
      'dosing/activity-product-mass',
      'flour/malt-to-falling-number',
      'flour/gluten-to-protein',
    ]),
  )
  for (const { id, run, example } of dusty)
    expect((run(example) as { cautions?: string[] }).cautions, id).toEqual(expect.arrayContaining([...DUST_CAUTIONS]))
})
