import { dayTurnsAtH } from '@/lib/kitchen/people/change-settings.input'
import { dateFormOf } from '@/lib/words/format/kept-forms'
import type { Words } from '@/lib/words/words'

/** The hours at which a day may turn, as the bakery writes them. */
export function dayTurnEntries(locale: string, { midnight }: Words['people']['settings']) {
  const { minValue, maxValue } = dayTurnsAtH
  const form = dateFormOf(locale, { hour: 'numeric', minute: '2-digit', timeZone: 'UTC' })
  return Array.from({ length: (maxValue ?? 0) + 1 }, (_, hour) => hour)
    .filter((hour) => hour >= (minValue ?? 0))
    .map((hour) => ({
      value: hour.toString(),
      label: hour === 0 ? midnight : form.format(new Date(hour * 60 * 60_000)),
    }))
}
