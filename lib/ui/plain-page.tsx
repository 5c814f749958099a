import type { ReactNode } from 'react'
import { InstallTape, type InstallNotice } from './install-tape'
import { LoafPair } from './loaf-pair'

export type PlainPageProps = {
  productName: string
  notice?: InstallNotice
  headline: string
  lead?: ReactNode
  children?: ReactNode
}

/** A page without a bakery around it: sign-in, set-up, invitation, error. One narrow column beside the margin. */
export function PlainPage({ productName, notice, headline, lead, children }: PlainPageProps) {
  return (
    <>
      <header className="border-b border-rule">
        {notice ? <InstallTape kind={notice.kind} /> : null}
        <div className="mx-auto flex max-w-page flex-wrap items-baseline justify-between gap-x-6 px-5 wide:px-8 print:px-0">
          <p className="py-3.5 font-bold">{productName}</p>
          {notice ? <p className="py-1.5 text-small font-semibold">{notice.text}</p> : null}
        </div>
      </header>
      <main className="mx-auto max-w-page gap-x-10 px-5 py-6 wide:grid wide:grid-cols-[13rem_minmax(0,1fr)] wide:px-8 wide:py-16 print:block print:px-0">
        <div className="mb-7 wide:mb-0 wide:pt-1 print:hidden">
          <LoafPair />
        </div>
        <div className="max-w-column">
          <h1 className="text-head font-semibold">{headline}</h1>
          {lead ? <p className="mt-3 text-lead">{lead}</p> : null}
          {children ? <div className="mt-7">{children}</div> : null}
        </div>
      </main>
    </>
  )
}
