import 'server-only'
import { log } from '../../db/log'
import type { DeskCaller } from '../caller'
import { dayInZone } from '../day-in-zone'
import { noteLook } from './note-look'
import type { Look } from './note-look.input'

/** What this process knows to be noted, and on which day of whose zone, so that a page that is opened again asks nothing. */
const noted = new Map<string, { day: string; timeZone: string }>()
const mostNoted = 10_000

/**
 * Has a look noted unless this process did so that day. It changes no answer: what goes wrong here is logged.
 * @param caller as the page looked them up; nobody's look is none
 */
export async function lookToday(caller: DeskCaller, look: Look): Promise<void> {
  const { actor } = caller
  if (!actor) return
  const now = (caller.now ?? (() => new Date()))()
  const key = `${actor.bakeryId} ${actor.personId} ${look.trialId} ${look.what}`
  const before = noted.get(key)
  if (before && dayInZone(now, before.timeZone) === before.day) return
  const result = await noteLook.call(caller, look)
  if (!result.ok) {
    log.warn({ event: 'look-not-noted', what: look.what, refusal: result.refusal.code })
    return
  }
  if (noted.size >= mostNoted) noted.clear()
  noted.set(key, { day: dayInZone(now, result.value.timeZone), timeZone: result.value.timeZone })
}
