'use client'

import { Button } from '@/lib/ui/button'
import { dropDraftsOf } from '@/lib/ui/kept-drafts'

/** Signs out, and leaves nothing in this browser of what the person typed and did not send. */
export function SignOutForm({ personId, label }: { personId: string; label: string }) {
  return (
    <form action="/sign-out" method="post" onSubmit={() => dropDraftsOf(localStorage, personId)}>
      <Button tone="quiet">{label}</Button>
    </form>
  )
}
