import { sayName } from '../../words/say'
import { stationCounts as words } from '../../words/en/station-counts'
import type { PieceFigures } from '../../kitchen/shifts/count-fault.input'
import { counted } from '../outbox/count-of-dough'

/** What a count says, figure by figure, without what nobody said. */
export function saidOfCount(count: PieceFigures): string[] {
  return counted.flatMap((what) => {
    const pieces = count[what]
    return pieces === null || pieces === undefined
      ? []
      : [sayName(words.said, 'en', { what: words.what[what], pieces })]
  })
}
