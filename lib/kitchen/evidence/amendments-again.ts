import 'server-only'
import { readAmendment } from '../../documents/amendment/read-amendment'
import type { AmendmentContent } from '../../documents/amendment/text-of-amendment'
import type { Closing } from '../../documents/closing/closing'
import type { AmendmentsOfFormat1 } from '../../documents/evidence-amendments/amendments-of-format-1'
import { amendContent } from '../amendments/amend-content'
import { amendedHash } from '../amendments/amended-hash'
import { inOrderOfAcceptance } from '../amendments/in-order-of-acceptance'
import type { Finding } from './finding'
import { firstUnlike } from './first-unlike'

/**
 * What came after the closing by itself: each amendment is the text that was hashed, and of what was closed; those that
 * were accepted are the ones that were signed for; and the second result comes out again with them put in.
 * @param figuresOf the figures that a closing comes to, as they are after they were written and read
 */
export function amendmentsAgain(
  { amendments, amended, second }: Omit<AmendmentsOfFormat1, 'format'>,
  closed: { hash: string; closing: Closing },
  figuresOf: (closing: Closing) => unknown,
): Finding {
  const differs = (facts: Finding['facts']): Finding => ({ what: 'amendments', outcome: 'differs', facts })
  const read: (AmendmentContent & { hash: string; verdict: (typeof amendments)[number]['verdict'] })[] = []
  for (const { text, hash, verdict } of amendments) {
    const one = readAmendment(text, hash)
    if (one.outcome !== 'read') return differs({ at: hash, was: '–', is: one.outcome })
    const { amendment } = one
    const first = firstUnlike(
      { trial: amendment.trial, closing: amendment.closing },
      { trial: closed.closing.trial.id, closing: closed.hash },
    )
    if (first) return differs(first)
    read.push({ ...amendment, hash, verdict })
  }
  const accepted = inOrderOfAcceptance(read, ({ verdict }) => verdict && { ...verdict, at: new Date(verdict.at) })
  const first =
    firstUnlike({ amended }, { amended: accepted.length === 0 ? null : amendedHash(accepted) }) ??
    firstUnlike(
      { second },
      { second: accepted.length === 0 ? null : figuresOf(amendContent(closed.closing, accepted)) },
    )
  return first ? differs(first) : { what: 'amendments', outcome: 'agrees', facts: {} }
}
