import Link from 'next/link'
import type { ReactNode } from 'react'
import { buttonClass, type ButtonTone } from './button-class'

/** A way to another page that stands where a button would. */
export function LinkButton({ tone, href, children }: { tone: ButtonTone; href: string; children: ReactNode }) {
  return (
    <Link href={href} className={buttonClass(tone)}>
      {children}
    </Link>
  )
}
