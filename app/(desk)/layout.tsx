import type { ReactNode } from 'react'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { DraftOwner } from '@/lib/ui/draft-owner'
import { DeskShell } from '@/lib/ui/desk-shell'
import { wordsIn } from '@/lib/words/words'
import { SignOutForm } from './sign-out-form'

export default async function DeskLayout({ children }: { children: ReactNode }) {
  const language = await currentLanguage()
  const { desk: words } = wordsIn(language)
  const { bakery, person, installKind } = await ask(getDesk)
  return (
    <DeskShell
      bakeryName={bakery.name}
      nav={[
        { href: '/shift', label: words.nav.shift },
        { href: '/trials', label: words.nav.trials },
        { href: '/formulas', label: words.nav.formulas },
        { href: '/stores', label: words.nav.stores },
        { href: '/decisions', label: words.nav.decisions },
        { href: '/calculators', label: words.nav.calculators },
        { href: '/team', label: words.nav.team },
      ]}
      navLabel={words.navigation}
      who={{ name: person.name, role: words.roles[person.role], accountHref: '/account', accountLabel: words.account }}
      notice={installKind === 'demo' ? { text: words.invented, kind: 'invented' } : undefined}
      skipLabel={words.skip}
      signOut={<SignOutForm personId={person.id} label={words.signOut} />}
    >
      <DraftOwner personId={person.id} words={words.drafts} language={language} locale={bakery.locale}>
        {children}
      </DraftOwner>
    </DeskShell>
  )
}
