import 'server-only'
import { headers } from 'next/headers'
import { after } from 'next/server'
import type { Look } from '@/lib/kitchen/key/note-look.input'
import { lookToday } from '@/lib/kitchen/key/look-today'
import { currentReader } from './reader'

/**
 * Notes, once the page is answered, that whoever reads it looked. What a browser fetches before anybody asked for it is
 * no look; the links of the app fetch no page beforehand.
 */
export async function noteLook(what: Look['what'], trialId: string): Promise<void> {
  const head = await headers()
  const purpose = `${head.get('sec-purpose') ?? ''} ${head.get('purpose') ?? ''}`
  if (purpose.includes('prefetch')) return
  const caller = await currentReader()
  after(() => lookToday(caller, { trialId, what }))
}
