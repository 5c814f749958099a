import { stationRoute } from '@/app/station-route'
import { goOn } from '@/lib/kitchen/stations/go-on'

export const POST = stationRoute(goOn)
