import type { ReactNode } from 'react'
import { PlainPage } from './plain-page'
import { Sheet } from './sheet'

export type ErrorSheetProps = {
  /** Given where no desk is around the page; it then brings its own frame. */
  productName?: string
  headline: string
  /** What happened, and what did not: whether anything was lost. */
  happened: string
  todo: string
  /** What to quote when asking for help. */
  reference?: { label: string; code: string }
  /** Ways on: links or buttons. */
  children?: ReactNode
}

/** Not found, or something went wrong: what happened, what to do, what to quote. */
export function ErrorSheet({ productName, headline, happened, todo, reference, children }: ErrorSheetProps) {
  const body = (
    <div className="mt-6 max-w-measure">
      <p>{todo}</p>
      {reference ? (
        <p className="mt-4 text-small text-ink-2">
          {reference.label}
          {gap}
          <span className="font-semibold text-ink select-all">{reference.code}</span>
        </p>
      ) : null}
      {children ? <div className="mt-6 flex flex-wrap items-center gap-3.5">{children}</div> : null}
    </div>
  )
  if (productName === undefined) {
    return (
      <Sheet headline={headline} lead={happened}>
        {body}
      </Sheet>
    )
  }
  return (
    <PlainPage productName={productName} headline={headline} lead={happened}>
      {body}
    </PlainPage>
  )
}

const gap = '\u2002'
