import 'server-only'
import { shiftHeader } from '@/lib/auth/station-cookie'
import type { Caller } from '@/lib/kitchen/caller'
import { currentCaller } from './caller'
import { currentStation } from './station-caller'

/**
 * A tablet says that it is one by naming a shift; its cookie alone would take the desk's place on a shared browser. Nor
 * does the desk take the tablet's: what somebody kept there would be in the book as somebody else's. @returns null for
 * a tablet that is not enrolled
 */
export async function currentSender(request: Request): Promise<Caller | null> {
  if (!request.headers.has(shiftHeader)) return currentCaller()
  const station = await currentStation()
  // What is sent has ids of its own, by which it is known again.
  return station && { ...station, formId: null }
}
