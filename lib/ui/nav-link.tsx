'use client'

import { PageLink } from './page-link'
import { usePathname } from 'next/navigation'

/** One part of the desk in its running head, marked when the page is in that part. */
export function NavLink({ href, label }: { href: string; label: string }) {
  const path = usePathname()
  const current = path === href || path.startsWith(`${href}/`)
  return (
    <PageLink
      href={href}
      aria-current={current ? 'page' : undefined}
      className="inline-flex min-h-10 items-center border-b-4 border-transparent pt-1 text-ink-2 no-underline hover:border-rule hover:text-ink aria-[current=page]:border-ink aria-[current=page]:font-semibold aria-[current=page]:text-ink"
    >
      {label}
    </PageLink>
  )
}
