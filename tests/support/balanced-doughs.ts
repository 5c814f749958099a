import { balanceArm } from '../../lib/calc/arms/balance-arm'
import type { ArmLine, ArmTotal, LineSet, StandIn } from '../../lib/calc/arms/types'
import type { Composition, IngredientKind } from '../../lib/calc/formula/types'
import { compositionTable } from './composition-table'

const table = new Map(compositionTable().map(({ id, composition }) => [id, composition]))

/** Composition of a row of the table (USDA SR28). */
export function compositionOfRow(id: string): Composition {
  const composition = table.get(id)
  if (!composition) throw new Error(`the table has no row ${id}`)
  return composition
}

export function armLine(
  id: string,
  kind: IngredientKind,
  massG: number,
  composition: Composition,
  marks: readonly StandIn[] = [],
  resolutionG = 0,
): ArmLine {
  return { id, kind, massG, composition, standsInFor: marks, resolutionG, isFlour: kind === 'flour' }
}

/** An enriched white dough: 1000 g of bread flour, rows of USDA SR28. Water counts in every line. */
const enrichedDough: readonly ArmLine[] = [
  armLine('flour', 'flour', 1000, compositionOfRow('bread-flour-white'), ['water']),
  armLine('water', 'water', 600, compositionOfRow('water-tap'), ['water']),
  armLine('salt', 'salt', 18, compositionOfRow('salt-table'), ['water']),
  armLine('yeast', 'yeast', 25, compositionOfRow('yeast-fresh'), ['water']),
  armLine('butter', 'fat', 100, compositionOfRow('butter-unsalted'), ['water', 'fat']),
  armLine('sugar', 'sugar', 80, compositionOfRow('sugar-granulated'), ['water', 'sugars']),
]

/** An arm of the enriched dough. Flour and yeast are locked, salt too unless `frees` it. */
export function armOfEnriched(q: {
  added?: readonly ArmLine[]
  set?: readonly LineSet[]
  hold: readonly ArmTotal[]
  frees?: readonly string[]
}) {
  const set = q.set ?? []
  const moving = ['water', 'butter', 'sugar', ...(q.frees ?? [])].filter(
    (id) => !set.some(({ lineId }) => lineId === id),
  )
  return balanceArm({
    control: enrichedDough,
    added: q.added ?? [],
    set,
    hold: q.hold,
    moves: moving.map((lineId) => ({ lineId, minG: 0, maxG: null })),
    how: q.hold.length === 0 ? 'on-top' : 'balanced',
  })
}

export const massOf = ({ lines }: ReturnType<typeof balanceArm>, id: string) =>
  lines.find(({ lineId }) => lineId === id)?.armG ?? Number.NaN
export const differenceOf = ({ totals }: ReturnType<typeof balanceArm>, total: ArmTotal) =>
  totals.find((each) => each.total === total)?.differenceG ?? Number.NaN
