import { stationRoute } from '@/app/station-route'
import { swapDoughs } from '@/lib/kitchen/repairs/swap-doughs'

/** Two doughs that wait exchange their places, by the same command as the desk's; asked again under the same name, nothing goes back. */
export const POST = stationRoute(swapDoughs)
