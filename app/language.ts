import 'server-only'
import { headers } from 'next/headers'
import { readLanguage, type Language } from '@/lib/words/words'

/** The language that the reader's browser asks for first, as far as we have it. */
export async function currentLanguage(): Promise<Language> {
  return readLanguage((await headers()).get('accept-language'))
}
