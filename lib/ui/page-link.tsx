import Link from 'next/link'
import type { ComponentProps } from 'react'

/**
 * A link to a page of the app. It fetches nothing before somebody follows it: fetching would be a use of their session, by
 * a page that only lies open, and work for the server at each look of every page.
 */
export function PageLink(props: Omit<ComponentProps<typeof Link>, 'prefetch'>) {
  return <Link {...props} prefetch={false} />
}
