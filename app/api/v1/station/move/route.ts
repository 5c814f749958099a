import { stationRoute } from '@/app/station-route'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'

/** Takes a dough out by the same command as the desk's: it knows what may be taken out, and whoever moved it can take it back for ten seconds. */
export const POST = stationRoute(moveBatch)
