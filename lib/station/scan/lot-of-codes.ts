import { readBadge } from '../../kitchen/badge-text.input'
import type { WeighLine } from '../keep/weigh-facts'
import { findLot, type LotFound } from '../outbox/lots-of-line'
import { isSlip, shownText } from './what-code-says'

/** What is found by a label; where it is no lot of the line, the code as it can be shown. */
export type LotOfCodes = (LotFound & { code: string }) | { found: 'several' | 'slip' | 'badge' }

/**
 * The lot that the codes of one label name, scanned or typed: a single lot of the line beside whatever else stands there.
 * Of two of them neither is taken.
 */
export function lotOfCodes(
  texts: readonly string[],
  line: Pick<WeighLine, 'ingredientId' | 'lots'>,
  lines: readonly Pick<WeighLine, 'ingredientId' | 'name' | 'lots'>[],
): LotOfCodes | null {
  const all = [...new Set(texts)].map((text): LotOfCodes => {
    if (isSlip(text)) return { found: 'slip' }
    if (readBadge(text) !== null) return { found: 'badge' }
    return { ...findLot(text, line, lines), code: shownText(text) }
  })
  const lots = all.filter((each) => each.found === 'lot')
  const [first] = lots
  if (first && lots.some(({ lot }) => lot.id !== first.lot.id)) return { found: 'several' }
  return first ?? all.find(({ found }) => found === 'other') ?? all[0] ?? null
}
