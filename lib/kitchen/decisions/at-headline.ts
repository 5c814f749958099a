import 'server-only'
import type { Evidence } from '../../documents/evidence/evidence'

/**
 * Evidence with what its headline rests on in the place of the comparison beside it, so that nobody decides on more than
 * the result said in its first sentence. Evidence that names no headline is as it was kept.
 */
export function atHeadline<Shown extends Pick<Evidence, 'headline' | 'isIndication' | 'arms'>>({
  headline,
  ...evidence
}: Shown) {
  return {
    ...evidence,
    isIndication: headline?.isIndication ?? evidence.isIndication,
    arms: evidence.arms.map((arm) => ({ ...arm, ...headline?.arms.find((each) => each.arm === arm.arm) })),
    /** Codes of the doughs without and with which it is the less favourable; none where it is the comparison as it is. */
    lessFavourableOf: headline?.lessFavourableOf ?? [],
  }
}
