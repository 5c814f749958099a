import { reply, replyRefused } from '@/app/api-answer'
import { currentLanguage } from '@/app/language'
import { notSignedIn } from '@/app/not-signed-in'
import { currentStation } from '@/app/station-caller'
import { getStation } from '@/lib/kitchen/stations/get-station'

/** Which tablet this is, who is on it, and who may log on: 401 where it is not enrolled. */
export async function GET(): Promise<Response> {
  const language = await currentLanguage()
  const station = await currentStation()
  if (!station) return replyRefused(notSignedIn, language)
  const result = await getStation.call(station, {})
  return result.ok ? reply(200, result.value) : replyRefused(result.refusal, language)
}
