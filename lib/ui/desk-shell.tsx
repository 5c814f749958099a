import { PageLink } from './page-link'
import type { ReactNode } from 'react'
import { FocusOnPage } from './focus-on-page'
import { InstallTape, type InstallNotice } from './install-tape'
import { NavLink } from './nav-link'

export type DeskShellProps = {
  bakeryName: string
  nav: readonly { href: string; label: string }[]
  navLabel: string
  who: { name: string; role: string; accountHref: string; accountLabel: string }
  notice?: InstallNotice
  skipLabel: string
  /** The sign-out form: an action with a `quiet` button inside. */
  signOut: ReactNode
  children: ReactNode
}

/** The frame of every desk page: running head, bakery, navigation, and the page itself as `main`. */
export function DeskShell({ bakeryName, nav, navLabel, who, notice, skipLabel, signOut, children }: DeskShellProps) {
  return (
    <>
      <FocusOnPage />
      <a
        href="#main"
        className="sr-only bg-sheet focus:not-sr-only focus:absolute focus:top-2 focus:left-2 focus:px-4 focus:py-2"
      >
        {skipLabel}
      </a>
      <header className="border-b border-rule print:border-ink">
        {notice ? <InstallTape kind={notice.kind} /> : null}
        <div className="border-b border-rule">
          <div className="mx-auto flex max-w-page flex-wrap items-center justify-between gap-x-6 px-5 text-small wide:px-8 print:px-0">
            {notice ? <p className="py-1.5 font-semibold">{notice.text}</p> : null}
            <div className="flex flex-wrap mid:ml-auto items-center gap-x-5 text-ink-2">
              <p className="py-1.5">
                <span className="text-ink">{who.name}</span>
                {separator}
                {who.role}
              </p>
              <PageLink href={who.accountHref} className="inline-flex min-h-8 items-center print:hidden">
                {who.accountLabel}
              </PageLink>
              <div className="print:hidden">{signOut}</div>
            </div>
          </div>
        </div>
        <div className="mx-auto max-w-page px-5 wide:grid wide:grid-cols-[13rem_minmax(0,1fr)] wide:gap-x-10 wide:px-8 print:px-0">
          <p className="pt-3 pb-1 font-bold wide:py-3.5">{bakeryName}</p>
          <nav aria-label={navLabel} className="flex flex-wrap gap-x-6">
            {nav.map((entry) => (
              <NavLink key={entry.href} href={entry.href} label={entry.label} />
            ))}
          </nav>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="outline-none">
        {children}
      </main>
    </>
  )
}

const separator = ', '
