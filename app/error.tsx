'use client'

import { awayDigest } from '@/lib/ui/away-digest'
import { AwaySheet } from '@/lib/ui/away-sheet'
import { ErrorSheet } from '@/lib/ui/error-sheet'
import { desk } from '@/lib/words/en/desk'

// See app/(desk)/error.tsx for why the words are not the reader's own language.
export default function OuterError({ error }: { error: Error & { digest?: string } }) {
  const { errors: text } = desk
  if (error.digest === awayDigest) return <AwaySheet productName={desk.product} text={text} />
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
