import 'server-only'
import type { Db, Tx } from '../../db/client'

/**
 * The version of a formula that is in production at a moment: the signed one that took effect last; null when none
 * has yet. The same rule as `inProduction` in rules.ts.
 */
export function versionInProduction(from: Db | Tx, bakeryId: string, formulaId: string, at: Date) {
  return from.formulaVersion.findFirst({
    where: { bakeryId, formulaId, signedAt: { not: null }, effectiveAt: { lte: at } },
    orderBy: [{ effectiveAt: 'desc' }, { signedAt: 'desc' }, { number: 'desc' }],
    select: { id: true, formulaId: true, number: true, effectiveAt: true, contentHash: true },
  })
}
