import { stationRoute } from '@/app/station-route'
import { logOn } from '@/lib/kitchen/stations/log-on'

export const POST = stationRoute(logOn)
