'use client'

import { ErrorSheet } from '@/lib/ui/error-sheet'
import { desk } from '@/lib/words/en/desk'

// See app/(desk)/error.tsx for why the words are not the reader's own language.
export default function OuterError({ error }: { error: Error & { digest?: string } }) {
  const { errors: text } = desk
  return (
    <ErrorSheet
      productName={desk.product}
      headline={text.broken}
      happened={text.brokenWhy}
      todo={text.brokenTodo}
      reference={error.digest ? { label: text.reference, code: error.digest } : undefined}
    />
  )
}
