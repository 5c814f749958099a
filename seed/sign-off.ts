import type { Caller } from '../lib/kitchen/caller'
import { getVersion } from '../lib/kitchen/formulas/get-version'
import { signOffVersion } from '../lib/kitchen/formulas/sign-off-version'

export type SeededFormula = { formulaId: string; versionId: string }
import { must } from './must'

/** Signs as the page does: looks at the version, and signs exactly that, from now on. */
export async function signOff(person: Caller, { formulaId, versionId }: SeededFormula): Promise<void> {
  const seen = must(await getVersion.call(person, { formulaId, versionId }))
  must(
    await signOffVersion.call(person, {
      versionId,
      seenRevision: seen.revision,
      seenHash: seen.contentHash,
      effectiveAt: null,
    }),
  )
}
