import type { Metadata } from 'next'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getReference } from '@/lib/kitchen/calculators/get-reference'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { PrintButton } from '@/lib/ui/print-button'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { NotWorkedOut, notWorkedOutCodes } from '../../../not-worked-out'
import { sayerOf } from '../../sayer'
import { aboutReference } from '../about-reference'
import { Described } from './described'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).calculators.reference.title }
}

/** The reference of one subject, to be read through or printed. */
export default async function SubjectReferencePage({ params }: { params: Promise<{ subject: string }> }) {
  const { subject } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { calculators: text } = words
  const [{ bakery }, asked] = await Promise.all([ask(getDesk), askUnless(getReference, { subject }, notWorkedOutCodes)])
  if (!asked.ok)
    return (
      <NotWorkedOut
        title={text.reference.title}
        back={{ href: '/calculators/reference', label: text.reference.allSubjects }}
        refusal={asked.refusal}
        words={words}
        language={language}
      />
    )
  const { calculations } = asked.value
  const [first] = calculations
  return (
    <Sheet
      kicker={text.reference.title}
      headline={say(text.reference.headlineOf, language, {
        subject: first ? sayerOf(first.id, language, bakery.locale).own.subject : subject,
        count: calculations.length,
      })}
      margin={aboutReference(text)}
    >
      {calculations.map((calculation) => (
        <Described
          key={calculation.id}
          calculation={calculation}
          sayer={sayerOf(calculation.id, language, bakery.locale)}
        />
      ))}
      <ActionRow>
        <PrintButton>{text.print}</PrintButton>
        <LinkButton tone="plain" href="/calculators/reference">
          {text.reference.allSubjects}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
