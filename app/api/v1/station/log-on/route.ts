import { dressCameOn } from '@/app/station-came-on'
import { stationRoute } from '@/app/station-route'
import { logOn } from '@/lib/kitchen/stations/log-on'

export const POST = stationRoute(logOn, { dress: dressCameOn })
