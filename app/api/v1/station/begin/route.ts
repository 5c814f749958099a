import { stationRoute } from '@/app/station-route'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'

/** Begins a dough by the same command as the desk's; a tablet names the tap, so that a lost answer begins nothing twice. */
export const POST = stationRoute(beginBatch)
