import { stationRoute } from '@/app/station-route'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'

/** Bakes a dough that is out again, by the same command as the desk's; a tablet names the tap, so that a lost answer makes no second one. */
export const POST = stationRoute(bakeAgain)
