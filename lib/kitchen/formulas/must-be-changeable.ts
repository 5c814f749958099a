import 'server-only'
import { Refusal } from '../refusal'
import type { VersionRead } from './read-version'

/**
 * Why nothing of a version can be changed any more, or null: it is signed or begun to be, it was dropped, or it is
 * the very dough that was baked in a trial.
 */
export function changeBar(
  version: Pick<VersionRead, 'contentHash' | 'discardedAt' | 'decision'>,
): 'signed' | 'discarded' | 'drafted-from-trial' | null {
  if (version.discardedAt) return 'discarded'
  if (version.contentHash !== null) return 'signed'
  return version.decision ? 'drafted-from-trial' : null
}

/** @throws Refusal by the bar of `changeBar` */
export function mustBeChangeable(version: Pick<VersionRead, 'contentHash' | 'discardedAt' | 'decision'>): void {
  const bar = changeBar(version)
  if (bar) throw new Refusal(bar)
}
