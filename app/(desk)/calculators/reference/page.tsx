import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getReference } from '@/lib/kitchen/calculators/get-reference'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { PrintButton } from '@/lib/ui/print-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { sayerOf } from '../sayer'
import { Described } from './described'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).calculators.reference.title }
}

const call = 'npm run -s calc -- <id>'

export default async function ReferencePage() {
  const language = await currentLanguage()
  const { calculators: text } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { calculations } = await ask(getReference)
  const subjects = [...new Set(calculations.map(({ id }) => id.split('/')[0] ?? ''))]
  return (
    <Sheet
      kicker={text.reference.title}
      headline={say(text.reference.headline, language, { count: calculations.length })}
      margin={{
        label: text.reference.about,
        entries: [
          { term: text.reference.made, detail: text.reference.madeText },
          {
            term: text.reference.call,
            detail: (
              <>
                <code translate="no">{call}</code> {text.reference.callText}
              </>
            ),
          },
        ],
      }}
    >
      {subjects.map((subject) => {
        const own = calculations.filter(({ id }) => id.startsWith(`${subject}/`))
        return (
          <Section key={subject} id={subject} title={sayerOf(own[0]?.id ?? subject, language, bakery.locale).own.subject}>
            {own.map((calculation) => (
              <Described key={calculation.id} calculation={calculation} sayer={sayerOf(calculation.id, language, bakery.locale)} />
            ))}
          </Section>
        )
      })}
      <ActionRow>
        <PrintButton>{text.print}</PrintButton>
        <LinkButton tone="plain" href="/calculators">
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
