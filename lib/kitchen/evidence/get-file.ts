import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { loadFile } from './load-file'

/**
 * The evidence of a trial as a file that can be checked elsewhere. Refuses: not-found, trial-not-ended, seal-broken,
 * took-too-long, not-worked-out.
 */
export const getFile = query({
  name: 'evidence.get-file',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { number, file } = await loadFile(db, actor, input.trialId, now)
    if (file === null) throw new Refusal('seal-broken')
    return { name: `trial-${number}-evidence.json`, text: file.text }
  },
})
