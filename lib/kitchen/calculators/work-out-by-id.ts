import 'server-only'
import { findEntry } from '../../calc/catalogue'
import { workOut, type WorkedOut } from './work-out'

/** Runs the calculation of that id, see `workOut`. @throws Error when there is none: whoever asks has looked */
export function workOutById(id: string, given: unknown): WorkedOut {
  const entry = findEntry(id)
  if (!entry) throw new Error(`there is no calculation ${id}`)
  return workOut(entry, given)
}
