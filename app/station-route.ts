import 'server-only'
import { currentLanguage } from '@/app/language'
import type { Caller } from '@/lib/kitchen/caller'
import type { Result } from '@/lib/kitchen/result'
import { frameRefusals, reply, replyRefused } from './api-answer'
import { notSignedIn } from './not-signed-in'
import { readJson } from './read-json'
import { isSameOrigin } from './same-origin'
import { currentStation } from './station-caller'

/** A PIN, a code or a token, written as wordily as JSON allows. */
const ofAFewWords = 4 * 1024

/** What the tablet's page is shown of an answer, and the headers that go with it. */
type Dress<Value> = (value: Value, held: string) => { shown: object; headers?: Record<string, string> }

type Acts<Value> = { call(caller: Caller, raw: unknown): Promise<Result<Value>> }

/** A route by which an enrolled tablet calls a command or query with what it sends as JSON: 401 where it is not enrolled. */
export function stationRoute<Value extends object | null>(
  command: Acts<Value>,
  { mostBytes = ofAFewWords, dress }: { mostBytes?: number; dress?: Dress<Value> } = {},
) {
  return async (request: Request): Promise<Response> => {
    if (!isSameOrigin(request)) return reply(403, { refusal: 'other-site' })
    const read = await readJson(request, mostBytes)
    if (!read.ok) return reply(read.status, { refusal: frameRefusals[read.status] })
    const language = await currentLanguage()
    const station = await currentStation()
    if (!station) return replyRefused(notSignedIn, language)
    const result = await command.call(station, read.value)
    if (!result.ok) return replyRefused(result.refusal, language)
    const { shown, headers } = dress?.(result.value, station.stationSecret) ?? { shown: result.value ?? {} }
    return reply(200, shown, headers)
  }
}
