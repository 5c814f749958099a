import { reply, replyRefused } from '@/app/api-answer'
import { currentLanguage } from '@/app/language'
import { notSignedIn } from '@/app/not-signed-in'
import { currentStation } from '@/app/station-caller'
import { getFloor } from '@/lib/kitchen/stations/get-floor'
import type { Allergen } from '@/lib/kitchen/stores/ingredient-facts.input'
import { sayOut } from './say-out'
import { measureName } from '@/lib/words/measure-name'
import { wordsIn } from '@/lib/words/words'

/** What a tablet reads, with the names of measures and allergens and what is out in words, so that it needs none of its own for them. */
export async function GET(): Promise<Response> {
  const language = await currentLanguage()
  const station = await currentStation()
  if (!station) return replyRefused(notSignedIn, language)
  const result = await getFloor.call(station, {})
  if (!result.ok) return replyRefused(result.refusal, language)
  const words = wordsIn(language)
  const inWords = (allergens: readonly Allergen[]) => allergens.map((each) => words.stores.allergens[each])
  const { doughs, next, out, locale, ...floor } = result.value
  return reply(200, {
    ...floor,
    out: out.map((dough) => sayOut(dough, locale, language)),
    next: next.map(({ allergens, ...dough }) => ({ ...dough, allergens: inWords(allergens) })),
    doughs: doughs.map(({ allergens, measures, ...dough }) => ({
      ...dough,
      allergens: inWords(allergens),
      measures: measures.map((measure) => ({
        ...measure,
        name: measureName(measure, words),
      })),
    })),
  })
}
