import 'server-only'

type Waiting = { id: string; state: string; dayNumber: number }

/** Why two doughs may not exchange their places; null when they may: both wait, on one mixing day. */
export function whyNotExchanged(one: Waiting, other: Waiting): 'not-of-one-day' | 'exchange-of-waiting' | null {
  if (one.id === other.id || one.dayNumber !== other.dayNumber) return 'not-of-one-day'
  return one.state === 'waiting' && other.state === 'waiting' ? null : 'exchange-of-waiting'
}
