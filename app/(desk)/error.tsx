'use client'

import { awayDigest } from '@/lib/ui/away-digest'
import { AwaySheet } from '@/lib/ui/away-sheet'
import { ErrorSheet } from '@/lib/ui/error-sheet'
import { desk } from '@/lib/words/en/desk'

// An error page is a client component and cannot ask the server for the reader's language: the server may be what is broken.
export default function DeskError({ error }: { error: Error & { digest?: string } }) {
  const { errors: text } = desk
  if (error.digest === awayDigest) return <AwaySheet text={text} />
  return (
    <ErrorSheet
      headline={text.broken}
      happened={text.brokenWhy}
      todo={text.brokenTodo}
      reference={error.digest ? { label: text.reference, code: error.digest } : undefined}
    />
  )
}
