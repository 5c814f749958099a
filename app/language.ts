import 'server-only'
import type { Language } from '@/lib/words/words'
import { currentReader } from './reader'

/** The language of whoever reads: the person's choice, else the bakery's, else what their browser asks for. */
export async function currentLanguage(): Promise<Language> {
  const { actor, browserLanguage } = await currentReader()
  return actor?.language ?? browserLanguage ?? 'en'
}
