import 'server-only'
import { cache } from 'react'
import type { DeskCaller } from '@/lib/kitchen/caller'
import { findCaller } from '@/lib/kitchen/find-caller'
import { currentCaller } from './caller'

/**
 * Who reads the page of this request, looked up and noted once for all that it asks. React forgets it with the request;
 * a form's action or an API's request has no page, so each call there looks anew.
 */
export const currentReader = cache(async (): Promise<DeskCaller> => {
  const caller = await currentCaller()
  try {
    const actor = await findCaller(caller, new Date())
    return { ...caller, actor: actor?.kind === 'desk' ? actor : null }
  } catch {
    // While the database is away each query finds that out, and says it.
    return caller
  }
})
