import 'server-only'
import { headers } from 'next/headers'
import { cache } from 'react'
import { shiftHeader } from '@/lib/auth/station-cookie'
import type { DeskCaller } from '@/lib/kitchen/caller'
import { findCaller, lookUpCaller } from '@/lib/kitchen/find-caller'
import { currentCaller } from './caller'

/** By it the framework calls an action; `app/answer-away.ts` knows a form by it, too. */
const actionHeader = 'next-action'

/**
 * Who reads the page of this request, looked up and noted once for all that it asks. React forgets it with the request;
 * a form's action or an API's request has no page, so each call there looks anew.
 *
 * A page that is shown again after an action is no use by itself: the action's command has noted its own, and a page
 * that looked again by itself (`app/(desk)/look-again.ts`) calls none. Nor is what a tablet asks in the same browser.
 */
export const currentReader = cache(async (): Promise<DeskCaller> => {
  const caller = await currentCaller()
  try {
    const head = await headers()
    const find = head.has(actionHeader) || head.has(shiftHeader) ? lookUpCaller : findCaller
    const actor = await find(caller, new Date())
    return { ...caller, actor: actor?.kind === 'desk' ? actor : null }
  } catch {
    // While the database is away each query finds that out, and says it.
    return caller
  }
})
