import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { readVersion } from './read-version'
import { showVersion } from './show-version'

/** A version as a specification sheet, see `showVersion`. Refuses: not-found, also for a version of another formula. */
export const getVersion = query({
  name: 'formulas.get-version',
  input: z.strictObject({ formulaId: z.uuid(), versionId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const version = await readVersion(db, actor.bakeryId, input.versionId)
    if (!version || version.formulaId !== input.formulaId) throw new Refusal('not-found')
    return showVersion(db, actor, now, version)
  },
})
