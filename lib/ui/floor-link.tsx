import { PageLink } from './page-link'
import type { ReactNode } from 'react'
import { floorButtonClass } from './floor-button-class'

/** A way to another page that stands where a button of the floor would. */
export function FloorLink({ href, children }: { href: string; children: ReactNode }) {
  return (
    <PageLink href={href} className={floorButtonClass('plain')}>
      {children}
    </PageLink>
  )
}
