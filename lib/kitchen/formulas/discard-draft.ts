import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { discardDraftInput } from './discard-draft.input'
import { discardVersion } from './discard-version'
import { lockFormulaOfVersion } from './lock-formula'
import { changeBar } from './must-be-changeable'
import { readVersion } from './read-version'

/**
 * Drops a draft that nobody has signed. It stays in the history as what it was. A draft that comes with a decision is
 * dropped by taking that back. Refuses: not-found, signed, discarded, decided-draft, stale.
 */
export const discardDraft = command({
  name: 'formulas.discard-draft',
  input: discardDraftInput,
  right: 'draft-formula',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const formulaId = await lockFormulaOfVersion(tx, bakeryId, input.versionId)
    const version = await readVersion(tx, bakeryId, input.versionId)
    if (!version) throw new Refusal('not-found')
    const bar = changeBar(version)
    if (bar) throw new Refusal(bar === 'drafted-from-trial' ? 'decided-draft' : bar)
    if (version.revision !== input.seenRevision || !(await discardVersion(tx, version, now)))
      throw await staleRefusal(tx, actor, version.id)
    return {
      value: { formulaId },
      audit: {
        target: version.id,
        before: 'draft',
        after: { formula: version.formula.name, version: version.number, state: 'discarded' },
      },
    }
  },
})
