import 'server-only'
import type { Comparison } from './compare-arms'
import type { ComparedOtherwise } from './compare-otherwise'
import { lessFavourable } from './less-favourable'

export type HeadlineComparison = {
  comparison: Comparison | null
  /** Codes of the doughs without and with which it is the less favourable; none where it is the comparison as it is. */
  lessFavourableOf: string[]
}

/**
 * What a headline rests on, from the comparison without and with the doughs that were set aside for what was found later.
 * @param withThem null where there are none
 */
export function headlineFrom(without: Comparison | null, withThem: ComparedOtherwise | null): HeadlineComparison {
  return without && withThem
    ? { comparison: lessFavourable(without, withThem.comparison), lessFavourableOf: withThem.codes }
    : { comparison: without, lessFavourableOf: [] }
}
