import { dressCameOn } from '@/app/station-came-on'
import { stationRoute } from '@/app/station-route'
import { showBadge } from '@/lib/kitchen/stations/show-badge'

export const POST = stationRoute(showBadge, { dress: dressCameOn })
