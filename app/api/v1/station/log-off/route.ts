import { stationRoute } from '@/app/station-route'
import { logOff } from '@/lib/kitchen/stations/log-off'

export const POST = stationRoute(logOff)
