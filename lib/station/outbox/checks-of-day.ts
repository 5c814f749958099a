import type { Floor, FloorInstrument } from '../keep/facts'
import { clockAheadMs } from './clock-ahead'
import type { EntryOf, OutboxEntry } from './entry'
import { dayBegan } from './day-began'
import { judgeShown } from '../../kitchen/checks/judge-shown.input'
import { holds } from './holds'

export type InstrumentToday = FloorInstrument & {
  /** How its last check of today stands; to do where there is none. */
  stand: 'toDo' | 'good' | 'failed'
  /** When that was, by the tablet's clock, ms; null where there is none. */
  at: number | null
  /** By how much a volume gauge showed too much when it was checked last, on whatever day, mL; null for others. */
  offMl: number | null
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
  const began = dayBegan(floor, now)
  const own = entries.filter((entry) => entry.kind === 'check').filter(holds)
  return floor.value.instruments.map((instrument) => {
    const { id, last } = instrument
    const made = own
      .filter(({ payload }) => payload.equipmentId === id)
      .map((entry) => ({ at: momentOf(entry, aheadMs), isGood: entry.shown.isGood, offMl: offOf(entry) }))
    if (last) made.push({ at: Date.parse(last.at) - aheadMs, isGood: last.isGood, offMl: last.offMl })
    // Of two at one moment the failed one counts.
    const [latest] = made.sort((a, b) => b.at - a.at || Number(a.isGood) - Number(b.isGood))
    const today = latest && latest.at >= began ? latest : null
    return {
      ...instrument,
      stand: today ? (today.isGood ? 'good' : 'failed') : 'toDo',
      at: today?.at ?? null,
      offMl: latest?.offMl ?? null,
    }
  })
}

/** Of a volume gauge, which is checked in mL here. */
function offOf({ payload: { block, shown } }: EntryOf<'check'>): number | null {
  if (block === null || block === undefined) return null
  return judgeShown({ shown: Number(shown), known: Number(block), offMost: 0 }).off
}

/** The tablet's clock may have been set since: what it said then is put right by what it knew of itself then. */
function momentOf({ payload: { takenAt, clockAheadS } }: EntryOf<'check'>, aheadMs: number): number {
  const at = Date.parse(takenAt)
  return clockAheadS === null || clockAheadS === undefined ? at : at + clockAheadS * 1000 - aheadMs
}
