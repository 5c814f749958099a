import type { Metadata } from 'next'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { checkTrial } from '@/lib/kitchen/evidence/check-trial'
import { wordsOfFinding } from '@/lib/kitchen/evidence/words-of-finding'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { NotWorkedOut, notWorkedOutCodes } from '../../../not-worked-out'
import { PrintAnchor } from '../../../print-anchor'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).evidence.title }
}

/** Whether everything that a trial showed comes out again, check by check. */
export default async function CheckPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { evidence: text } = words
  const back = { href: `/trials/${trialId}/result`, label: text.back }
  await ask(getDesk)
  const asked = await askUnless(checkTrial, { trialId }, notWorkedOutCodes)
  if (!asked.ok)
    return <NotWorkedOut title={text.title} back={back} refusal={asked.refusal} words={words} language={language} />
  const { number, hasFile, findings } = asked.value
  const first = findings.find(({ isSound }) => !isSound)
  const headline = !first
    ? text.headline.sound
    : first.outcome === 'other-calculations'
      ? text.headline.otherCalculations
      : text.headline.unsound
  return (
    <Sheet kicker={say(text.kicker, language, { number })} headline={headline} lead={text.lead}>
      <Section id="checks" title={text.tableTitle}>
        <SheetTable
          caption={text.tableTitle}
          captionHidden
          columns={[
            { key: 'what', label: text.what },
            { key: 'outcome', label: text.outcome },
          ]}
        >
          {findings.map((finding, at) => {
            const said = wordsOfFinding(finding, language)
            return (
              <tr key={`${at} ${finding.what}`}>
                <Cell head={!finding.isSound}>
                  {said.what}
                  {said.fact === null ? null : (
                    <span className="block text-small font-normal break-words text-ink-2">{said.fact}</span>
                  )}
                </Cell>
                <Cell>{finding.isSound ? said.outcome : <b>{said.outcome}</b>}</Cell>
              </tr>
            )
          })}
        </SheetTable>
      </Section>
      {hasFile ? (
        <Section id="file" title={text.download}>
          <p className="mb-3 max-w-measure">{paragraph([text.downloadNote, text.elsewhere], language)}</p>
          <a className="print:hidden" href={`/trials/${trialId}/check/file`} download>
            {say(text.fileName, language, { number })}
          </a>
        </Section>
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
