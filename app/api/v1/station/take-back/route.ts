import { stationRoute } from '@/app/station-route'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'

/** Takes back that a dough was begun, by the same command as the desk's: for ten seconds, by whoever began it. */
export const POST = stationRoute(undoMove)
