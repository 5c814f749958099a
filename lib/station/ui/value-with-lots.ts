import { sayName } from '../../words/say'
import { lotName } from './lot-name'
import { stationLots as words } from '../../words/en/station-lots'

/** What is written of a line, with the lots that it is from by their codes; of none it is said as it is. */
export function valueWithLots(value: string, lots: readonly Parameters<typeof lotName>[0][]): string {
  return lots.length === 0 ? value : sayName(words.valueOf, 'en', { value, lots: lots.map(lotName) })
}
