'use client'

import { AgainButton } from './again-button'
import { ErrorSheet } from './error-sheet'

export type AwaySheetProps = {
  /** Given where no desk is around the page. */
  productName?: string
  text: { away: string; awayWhy: string; awayTodo: string; again: string }
}

/** The database went away while a page was made: what that means, and the page anew. */
export function AwaySheet({ productName, text }: AwaySheetProps) {
  return (
    <ErrorSheet productName={productName} headline={text.away} happened={text.awayWhy} todo={text.awayTodo}>
      <AgainButton>{text.again}</AgainButton>
    </ErrorSheet>
  )
}
