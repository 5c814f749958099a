import { readFileSync } from 'node:fs'
import path from 'node:path'
import Papa from 'papaparse'
import type { Composition } from '@/lib/calc/formula/types'

export type TableRow = { id: string; composition: Composition; saltG: number; closurePct: number }

/**
 * Rows of tests/published/data/ingredient-composition.csv: USDA National Nutrient Database for Standard Reference,
 * release 28, 2015, per 100 g; salt (sodium × 2.5) and the sum of water, protein, fat, carbohydrate and ash beside them.
 */
export function compositionTable(): TableRow[] {
  const text = readFileSync(path.join(import.meta.dirname, '../published/data/ingredient-composition.csv'), 'utf8')
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
  if (errors.length > 0) throw new Error(errors[0]?.message)
  return data.map((row) => {
    const figure = (column: string) => {
      const cell = row[column]
      if (cell === undefined) throw new Error(`${column} is missing`)
      return cell === '' ? null : Number(cell)
    }
    return {
      id: row.id ?? '',
      composition: {
        waterPct: figure('water_g'),
        proteinPct: figure('protein_g'),
        fatPct: figure('fat_g'),
        carbohydratePct: figure('carbohydrate_g'),
        sugarsPct: figure('sugars_g'),
        fibrePct: figure('fibre_g'),
        ashPct: figure('ash_g'),
        sodiumMgPer100g: figure('sodium_mg'),
      },
      saltG: figure('salt_equiv_g') ?? Number.NaN,
      closurePct: figure('closure_sum_g') ?? Number.NaN,
    }
  })
}
