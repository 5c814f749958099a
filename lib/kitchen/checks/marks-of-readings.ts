import 'server-only'
import type { CheckedKind } from './judge-shown.input'
import { readAround, type ReadAround, type StoodCheck } from './read-around'

/** Something that was read or weighed, and what is known of what with. */
export type Taken<What> = {
  what: What
  kind: CheckedKind
  /** ms */
  at: number
  /** Of a mass that everybody is told, g, or a volume, mL: what carries or holds less cannot have shown it. */
  amount: number | null
}

/** A scale, thermometer or volume gauge with its checks; from when and until when it was there to be used, ms. */
export type CheckedInstrument = {
  id: string
  name: string
  kind: CheckedKind
  /** The most that it carries, g, or holds, mL. */
  most: number | null
  from: number
  until: number | null
  checks: readonly StoodCheck[]
}

export type Mark<What> = ReadAround & {
  instrument: { id: string; name: string; kind: CheckedKind }
  /** Whether nothing else can have been read with; otherwise it may have been this one. */
  isOnlyOne: boolean
  of: What[]
}

/**
 * What was read around a failed check, by instrument. A reading does not name what it was taken with, so every instrument
 * of its kind that was there and carries as much may have been it.
 */
export function marksOfReadings<What>(
  taken: readonly Taken<What>[],
  instruments: readonly CheckedInstrument[],
): Mark<What>[] {
  const marks = new Map<string, Mark<What>>()
  for (const each of taken) {
    const possible = instruments.filter((instrument) => canHaveTaken(instrument, each))
    for (const { id, name, kind, checks } of possible) {
      const around = readAround(each.at, checks)
      if (!around) continue
      const isOnlyOne = possible.length === 1
      const key = JSON.stringify([id, around, isOnlyOne])
      const mark = marks.get(key) ?? { ...around, instrument: { id, name, kind }, isOnlyOne, of: [] }
      marks.set(key, mark)
      mark.of.push(each.what)
    }
  }
  return [...marks.values()].sort(inOrder)
}

function canHaveTaken(instrument: CheckedInstrument, { kind, at, amount }: Taken<unknown>): boolean {
  const { from, until, most } = instrument
  if (instrument.kind !== kind || at < from || (until !== null && at > until)) return false
  return amount === null || most === null || amount <= most
}

function inOrder(a: Mark<unknown>, b: Mark<unknown>): number {
  const byName = a.instrument.name < b.instrument.name ? -1 : a.instrument.name > b.instrument.name ? 1 : 0
  const byId = a.instrument.id < b.instrument.id ? -1 : a.instrument.id > b.instrument.id ? 1 : 0
  return (
    a.failedAt - b.failedAt ||
    byName ||
    byId ||
    Number(a.outcome === 'after-failed') - Number(b.outcome === 'after-failed') ||
    Number(b.isOnlyOne) - Number(a.isOnlyOne)
  )
}
