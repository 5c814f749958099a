import { PageLink } from './page-link'
import type { ReactNode } from 'react'
import { buttonClass, type ButtonTone } from './button-class'

export type LinkButtonProps = {
  tone: ButtonTone
  href: string
  /** More than the words say, where several links on a page have the same ones: 'Change Ayo'. */
  fullLabel?: string
  children: ReactNode
}

/** A way to another page that stands where a button would. */
export function LinkButton({ tone, href, fullLabel, children }: LinkButtonProps) {
  return (
    <PageLink href={href} aria-label={fullLabel} className={buttonClass(tone)}>
      {children}
    </PageLink>
  )
}
