import { stationRoute } from '@/app/station-route'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'

/** Opens the key of a dough to whoever is on the tablet, by the same command as the desk's: then it is given its weights. */
export const POST = stationRoute(openDoughKey)
