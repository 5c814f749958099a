'use client'

import { ErrorSheet } from '@/lib/ui/error-sheet'
import { desk } from '@/lib/words/en/desk'

// An error page is a client component and cannot ask the server for the reader's language: the server may be what is broken.
export default function DeskError({ error }: { error: Error & { digest?: string } }) {
  const { errors: text } = desk
  return (
    <ErrorSheet
      headline={text.broken}
      happened={text.brokenWhy}
      todo={text.brokenTodo}
      reference={error.digest ? { label: text.reference, code: error.digest } : undefined}
    />
  )
}
