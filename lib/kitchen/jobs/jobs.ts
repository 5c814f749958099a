import 'server-only'
import { anchorRecords } from './anchor-records'
import { checkRecords } from './check-records'
import { clearRunOut } from './clear-run-out'

/** What the install does by itself, in the order in which it is done. */
export const jobs = [clearRunOut, checkRecords, anchorRecords] as const
