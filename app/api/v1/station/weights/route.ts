import { reply, replyRefused } from '@/app/api-answer'
import { currentLanguage } from '@/app/language'
import { notSignedIn } from '@/app/not-signed-in'
import { currentStation } from '@/app/station-caller'
import { getWeighList } from '@/lib/kitchen/stations/get-weigh-list'
import { weighListInWords } from './weigh-list-in-words'

/** What a dough weighs, `?batchId=…`, with everything that is not a number in words. */
export async function GET(request: Request): Promise<Response> {
  const language = await currentLanguage()
  const station = await currentStation()
  if (!station) return replyRefused(notSignedIn, language)
  const result = await getWeighList.call(station, { batchId: new URL(request.url).searchParams.get('batchId') })
  return result.ok ? reply(200, weighListInWords(result.value, language)) : replyRefused(result.refusal, language)
}
