import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { VersionContent } from '../../documents/version-content/text-of-version-content'
import { onlyOne } from '../only-one'
import { costedLine, currenciesOf, loafMinorOf, unpricedOf, type CostedLine } from '../stores/costed-lines'
import { priceOn } from '../stores/price-on'
import type { PieceCost } from './changes-cost'
import { figuredStages } from './ingredients-of-content'
import { figuresOf } from './rules'

export type CostedPiece = PieceCost & {
  /** Ingredients without a price on the day. */
  unpriced: string[]
  mixedCurrencies: boolean
  /** The latest day from which one of the prices holds, YYYY-MM-DD; null without any. */
  latestPriceFrom: string | null
}

/**
 * What goes into one piece of each content and what it costs in ingredients at the prices of a day, dough loss included. For signing and for those who see costs: whoever calls has made sure of that.
 * @param day YYYY-MM-DD, in the bakery's zone
 */
export async function pieceCosts(
  from: Db | Tx,
  bakeryId: string,
  contents: readonly VersionContent[],
  day: string,
): Promise<CostedPiece[]> {
  const ids = contents.flatMap(({ stages }) =>
    stages.flatMap(({ lines }) => lines.map(({ ingredient }) => ingredient.id)),
  )
  const held = await priceOn(from, bakeryId, [...new Set(ids)], day)
  return contents.map((content) => {
    const lines = linesOfBatch(content).map((line) => costedLine(line, held))
    const massesG = new Map<string, number>()
    for (const { ingredientId, massG } of lines)
      massesG.set(ingredientId, (massesG.get(ingredientId) ?? 0) + massG / content.batch.pieces)
    const currencies = currenciesOf(lines)
    const currency = onlyOne(currencies)
    const pricedFrom = lines.flatMap(({ price }) => price?.validFrom ?? []).sort()
    return {
      massesG,
      perPieceMinor: loafMinorOf(lines, day, currency, content.batch),
      currency,
      unpriced: unpricedOf(lines),
      mixedCurrencies: currencies.length > 1,
      latestPriceFrom: pricedFrom.at(-1) ?? null,
    }
  })
}

function linesOfBatch(content: VersionContent): Omit<CostedLine, 'price'>[] {
  const masses = figuresOf(figuredStages(content, []), content.batch)?.batch?.lineMassesG
  return content.stages.flatMap((stage, s) =>
    stage.lines.map(({ ingredient }, l) => ({
      ingredientId: ingredient.id,
      name: ingredient.name,
      massG: masses?.[s]?.[l] ?? 0,
      isWater: ingredient.kind === 'water',
    })),
  )
}
