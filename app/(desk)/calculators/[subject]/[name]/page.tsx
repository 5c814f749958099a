import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getAnswer } from '@/lib/kitchen/calculators/get-answer'
import { getCalculation } from '@/lib/kitchen/calculators/get-calculation'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { PrintButton } from '@/lib/ui/print-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { AnswerView } from '../../answer-view'
import { sayerOf } from '../../sayer'
import { AnswerSection } from './answer-section'
import { changeRows } from './change-rows'
import { headlineOf } from './headline-of'
import { LinkNote } from './link-note'
import { placeFaults } from './place-faults'
import { QuestionForm } from './question-form'
import { readTyped } from './read-typed'
import { TooLong } from './too-long'
import { fitsAddress, typedOfParams } from './typed'
import { typedOfGiven } from './typed-of-given'

type CalculationPageProps = {
  params: Promise<{ subject: string; name: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export async function generateMetadata({ params }: CalculationPageProps): Promise<Metadata> {
  const { subject, name } = await params
  const { id } = await ask(getCalculation, { id: `${subject}/${name}` })
  const { own } = sayerOf(id, await currentLanguage(), 'en')
  return { title: own.title }
}

export default async function CalculationPage({ params, searchParams }: CalculationPageProps) {
  const { subject, name } = await params
  const language = await currentLanguage()
  const { bakery } = await ask(getDesk)
  const { id, source, asks, example } = await ask(getCalculation, { id: `${subject}/${name}` })
  const sayer = sayerOf(id, language, bakery.locale)
  const { own, text } = sayer

  const sent = typedOfParams(await searchParams)
  const isFirst = Object.keys(sent).length === 0
  const changed = changeRows(sent)
  const typed = isFirst ? typedOfGiven(asks, example, bakery.locale) : (changed ?? sent)
  if (!fitsAddress(typed)) return <TooLong id={id} typed={typed} sayer={sayer} />

  const given = readTyped(asks, typed, bakery.locale)
  const { worked, isExample } = await ask(getAnswer, { id, given })
  // Who adds a row is not done yet: what is missing is said when the form is sent.
  const faults = placeFaults(worked.ok || changed ? [] : worked.faults, asks, typed, sayer)
  const hasTable = asks.some(({ shape }) => shape.kind === 'list' && shape.of.kind === 'group')
  const headline = worked.ok ? headlineOf(worked.answer, sayer) : text.headlineWrong

  return (
    <Sheet
      kicker={headline ? own.title : text.title}
      headline={headline ?? own.title}
      margin={{
        label: text.about,
        entries: [
          { term: text.subject, detail: own.subject },
          { term: text.source, detail: <span translate="no">{source}</span> },
        ],
      }}
    >
      {isExample ? (
        <Notice tone="plain" word={text.invented}>
          {text.inventedText}
        </Notice>
      ) : null}
      <div className={hasTable ? undefined : 'grid-cols-2 items-start gap-x-12 wide:grid print:block'}>
        <Section id="question-form" title={text.question} note={text.questionNote} screenOnly>
          <QuestionForm id={id} fields={asks} typed={typed} faults={faults} sayer={sayer} />
        </Section>
        <div>
          {worked.ok ? <AnswerSection answer={worked.answer} sayer={sayer} /> : null}
          <div className="hidden print:block">
            <Section id="question-printed" title={text.question}>
              <AnswerView group={given} sayer={sayer} />
            </Section>
          </div>
        </div>
      </div>
      {worked.ok ? <LinkNote id={id} typed={typed} sayer={sayer} /> : null}
      <ActionRow>
        <PrintButton>{text.print}</PrintButton>
        {isExample ? null : (
          <LinkButton tone="plain" href={`/calculators/${id}`}>
            {text.example}
          </LinkButton>
        )}
        <LinkButton tone="plain" href="/calculators">
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
