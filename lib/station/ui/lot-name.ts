import { sayName } from '../../words/say'
import { stationLots as words } from '../../words/en/station-lots'

/** What a lot is called: by its code, and what is to be known of that. */
export function lotName({
  code,
  isToConfirm,
  sameAs,
}: {
  code: string
  isToConfirm?: boolean
  sameAs?: string | null
}): string {
  if (sameAs) return sayName(words.nameOfOther, 'en', { code, other: sameAs })
  return isToConfirm ? sayName(words.nameToConfirm, 'en', { code }) : code
}
