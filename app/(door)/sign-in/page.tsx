import type { Metadata } from 'next'
import { currentLanguage } from '@/app/language'
import { signInInput } from '@/lib/kitchen/people/sign-in.input'
import { PlainPage } from '@/lib/ui/plain-page'
import { rulesOf } from '@/lib/ui/rules-of'
import { wordsIn } from '@/lib/words/words'
import { SignInForm } from './sign-in-form'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).door.signIn.title }
}

export default async function SignInPage() {
  const { door, desk, refusals } = wordsIn(await currentLanguage())
  return (
    <PlainPage productName={desk.product} headline={door.signIn.title} lead={door.signIn.lead}>
      <SignInForm
        rules={rulesOf(signInInput)}
        words={{ ...door.signIn, wrong: refusals['wrong-sign-in'], away: refusals.away }}
      />
    </PlainPage>
  )
}
