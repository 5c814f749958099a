import 'server-only'
import { clopperPearson } from '../../calc/panel/clopper-pearson'
import { MOST_TASTERS } from '../../calc/panel/constants'

/**
 * How many loaves of an arm were spoilt, with the exact interval of their share as if each were spoilt by itself; loaves
 * of one dough are not, so the true one is wider. Null where none was counted, or more were good than planned, so
 * that nobody knows out of how many; no interval beyond what the exact one is worked out for.
 * @param good over the batches that count; @param planned pieces of one batch; @param confidencePct two-sided
 * Source: Clopper & Pearson (1934), by lib/calc/panel/clopper-pearson.ts.
 */
export function spoiltLoaves(
  good: { pieces: number; batches: number } | null,
  planned: number,
  confidencePct: number,
): { count: number; of: number; interval: { lowPct: number; highPct: number } | null } | null {
  if (good === null) return null
  const of = good.batches * planned
  const count = of - good.pieces
  if (of < 1 || count < 0) return null
  if (of > MOST_TASTERS) return { count, of, interval: null }
  const { lowShare, highShare } = clopperPearson({
    correct: count,
    tasters: of,
    tailShare: (1 - confidencePct / 100) / 2,
  })
  return { count, of, interval: { lowPct: 100 * lowShare, highPct: 100 * highShare } }
}
