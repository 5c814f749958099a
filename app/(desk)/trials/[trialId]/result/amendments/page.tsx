import type { Metadata } from 'next'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { NotWorkedOut, notWorkedOutCodes } from '../../../../not-worked-out'
import { PrintAnchor } from '../../../../print-anchor'
import { AmendmentNotice } from './amendment-notice'
import { AmendmentsSection } from './amendments-section'
import { DecideForms } from './decide-forms'
import { ProposeForms } from './propose-forms'
import { SlipForm } from './slip-form'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).amendments.title }
}

/** What came after the closing of a trial, what waits for whoever looks, and the way to propose more. */
export default async function AmendmentsPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { amendments: text } = words
  const back = { href: `/trials/${trialId}/result`, label: words.evidence.back }
  const [{ bakery }, asked] = await Promise.all([ask(getDesk), askUnless(getResult, { trialId }, notWorkedOutCodes)])
  if (!asked.ok)
    return <NotWorkedOut title={text.title} back={back} refusal={asked.refusal} words={words} language={language} />
  const { trial, after: amended } = asked.value
  return (
    <Sheet
      kicker={say(words.results.kicker, language, { number: trial.number })}
      headline={text.headline}
      lead={amended ? text.lead : text.notClosed}
    >
      {amended ? (
        <>
          <AmendmentNotice amended={amended} bakery={bakery} language={language} />
          <AmendmentsSection amended={amended} bakery={bakery} language={language} />
          <DecideForms amended={amended} bakery={bakery} language={language} />
          <SlipForm amended={amended} trialId={trialId} bakery={bakery} language={language} />
          <ProposeForms amended={amended} trialId={trialId} bakery={bakery} language={language} />
        </>
      ) : null}
      <ActionRow>
        <LinkButton tone="plain" href={back.href}>
          {back.label}
        </LinkButton>
      </ActionRow>
      <PrintAnchor />
    </Sheet>
  )
}
