import type { Floor, FloorInstrument } from '../keep/facts'
import { clockAheadMs } from './clock-ahead'
import type { EntryOf, OutboxEntry } from './entry'
import { holds } from './holds'

export type InstrumentToday = FloorInstrument & {
  /** How its last check of today stands; to do where there is none. */
  stand: 'toDo' | 'good' | 'failed'
  /** When that was, by the tablet's clock, ms; null where there is none. */
  at: number | null
}

/**
 * How the checks of today stand, by what the book said and by what lies on the tablet. A floor that was fetched on a day
 * that is over asks anew.
 * @param now by the tablet's clock, ms
 */
export function checksOfDay(
  floor: { value: Floor; at: number },
  entries: readonly OutboxEntry[],
  now: number,
): InstrumentToday[] {
  const aheadMs = clockAheadMs(floor)
  const { day, instruments } = floor.value
  const ends = Date.parse(day.endsAt) - aheadMs
  const began = now >= ends ? ends : Date.parse(day.beganAt) - aheadMs
  const own = entries.filter((entry) => entry.kind === 'check').filter(holds)
  return instruments.map((instrument) => {
    const { id, last } = instrument
    const made = own
      .filter(({ payload }) => payload.equipmentId === id)
      .map((entry) => ({ at: momentOf(entry, aheadMs), isGood: entry.shown.isGood }))
    if (last) made.push({ at: Date.parse(last.at) - aheadMs, isGood: last.isGood })
    // Of two at one moment the failed one counts.
    const [latest] = made
      .filter(({ at }) => at >= began)
      .sort((a, b) => b.at - a.at || Number(a.isGood) - Number(b.isGood))
    return { ...instrument, stand: latest ? (latest.isGood ? 'good' : 'failed') : 'toDo', at: latest?.at ?? null }
  })
}

/** The tablet's clock may have been set since: what it said then is put right by what it knew of itself then. */
function momentOf({ payload: { takenAt, clockAheadS } }: EntryOf<'check'>, aheadMs: number): number {
  const at = Date.parse(takenAt)
  return clockAheadS === null || clockAheadS === undefined ? at : at + clockAheadS * 1000 - aheadMs
}
