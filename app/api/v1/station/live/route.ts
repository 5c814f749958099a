import { liveAnswer, refuseHead } from '@/app/live-answer'
import { currentStation } from '@/app/station-caller'

/** The same as at the desk (`/api/live`) for an enrolled tablet, by its own cookie, whoever is on it. */
export async function GET(): Promise<Response> {
  return liveAnswer(await currentStation(), null)
}

export const HEAD = refuseHead
