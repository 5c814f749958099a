import 'server-only'
import type { RecordFault } from '../../db/generated/enums'

type LastCheck = { at: Date; fault: RecordFault | null; faultNumber: bigint | null }

/** Where the record does not fit together, as the install last found it; null where it does, or nobody could tell. */
export function lastFoundBroken(check: LastCheck | null) {
  if (!check || check.fault === null || check.fault === 'unknown_format') return null
  return { at: check.at, number: Number(check.faultNumber), why: check.fault }
}
