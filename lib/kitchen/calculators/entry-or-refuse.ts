import 'server-only'
import { findEntry } from '../../calc/catalogue'
import type { CalcEntry } from '../../calc/entry'
import { Refusal } from '../refusal'

/** The calculation of that id. Refuses: not-found. */
export function entryOrRefuse(id: string): CalcEntry {
  const entry = findEntry(id)
  if (!entry) throw new Refusal('not-found')
  return entry
}
