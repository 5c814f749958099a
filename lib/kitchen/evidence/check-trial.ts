import 'server-only'
import { z } from 'zod'
import { inPool } from '../heavy/in-pool'
import { keepLast } from '../heavy/keep-last'
import { query } from '../query'
import type { Sealed } from '../results/load-sealed'
import { isSound, type Finding } from './finding'
import { loadFile } from './load-file'

/** So many checks are kept by this process, those that were looked at last: the same file comes to the same. */
const kept = keepLast<Finding[]>(100)

/**
 * Whether everything that a trial showed comes out again: the book against what was closed, and the file of its evidence
 * by itself. Refuses: not-found, trial-not-ended, took-too-long, not-worked-out.
 */
export const checkTrial = query({
  name: 'evidence.check-trial',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { number, sealed, file } = await loadFile(db, actor, input.trialId, now)
    const findings: Finding[] = [
      { what: 'book', outcome: outcomeOf(sealed), facts: {} },
      ...(file === null ? [] : await kept(file.facts, () => inPool('check-file', { text: file.text, paper: null }))),
    ]
    return {
      number,
      hasFile: file !== null,
      findings: findings.map((finding) => ({ ...finding, isSound: isSound(finding) })),
    }
  },
})

function outcomeOf({ outcome }: Sealed): Finding['outcome'] {
  switch (outcome) {
    case 'agrees':
      return 'agrees'
    case 'open':
    case 'unsealed':
      return 'not-there'
    case 'unknown-format':
      return 'unknown-format'
    case 'differs':
    case 'damaged':
      return 'differs'
    default:
      return outcome satisfies never
  }
}
