import { stationRoute } from '@/app/station-route'
import { listLacking } from '@/lib/kitchen/intake/list-lacking'

/** Five hundred ids with their hashes. */
const mostBytes = 96 * 1024

export const POST = stationRoute(listLacking, { mostBytes })
