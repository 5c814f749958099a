import { frameRefusals, reply, replyRefused } from '@/app/api-answer'
import { currentCaller } from '@/app/caller'
import { currentLanguage } from '@/app/language'
import { readJson } from '@/app/read-json'
import { isSameOrigin } from '@/app/same-origin'
import { stationCookieHeader } from '@/lib/auth/station-cookie'
import { enrolStation } from '@/lib/kitchen/stations/enrol-station'

const mostBytes = 4 * 1024

/** Enrols the tablet that sends a station's code: its secret goes into a cookie that no script can read. */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return reply(403, { refusal: 'other-site' })
  const read = await readJson(request, mostBytes)
  if (!read.ok) return reply(read.status, { refusal: frameRefusals[read.status] })
  const result = await enrolStation.call(await currentCaller(), read.value)
  if (!result.ok) return replyRefused(result.refusal, await currentLanguage())
  const { secret, ...shown } = result.value
  return reply(200, shown, { 'Set-Cookie': stationCookieHeader(secret) })
}
