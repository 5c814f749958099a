import type { Metadata } from 'next'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { noteLook } from '@/app/note-look'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SideBySide } from '@/lib/ui/side-by-side'
import { paragraph } from '@/lib/words/paragraph'
import { fill, say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { NotWorkedOut, notWorkedOutCodes } from '../../../not-worked-out'
import { amendedHeadline } from './amendments/amended-headline'
import { AmendmentNotice } from './amendments/amendment-notice'
import { AmendmentsSection } from './amendments/amendments-section'
import { SecondResult } from './amendments/second-result'
import { ArmSentenceList } from './arm-sentence-list'
import { CloseForm } from './close-form'
import { conditionWarnings } from './condition-forms'
import { Corrections } from './corrections'
import { CountedOtherwise } from './counted-otherwise'
import { CostByUnit, CostTable, SameVolume } from './cost-table'
import { DoughsTable } from './doughs-table'
import { LevelsTable } from './levels-table'
import { marginEntries } from './margin-entries'
import { MethodNote } from './method-note'
import { NumbersTable } from './numbers-table'
import { Picture } from './picture'
import { ProgressTable } from './progress-table'
import { resultForms } from './result-forms'
import { SealNotice } from './seal-notice'
import { SoFar } from './so-far'
import { headlineOf } from './say-result'
import { ToRepair } from './to-repair'
import { WhatNow } from './what-now'
import { WhoKnew } from './who-knew'
import { WeighedOtherwise } from './weighed-otherwise'
import { WentWrong } from './went-wrong'
import { WhatElse } from './what-else'
import { PrintAnchor } from '../../../print-anchor'
import { KeepCurrent } from '../../../keep-current'
import { MarksSection } from '../../../marks-section'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).results.title }
}

export default async function ResultPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { desk, results: text, importing } = words
  const [{ bakery, record }, asked] = await Promise.all([
    ask(getDesk),
    askUnless(getResult, { trialId }, notWorkedOutCodes),
  ])
  if (!asked.ok)
    return (
      <NotWorkedOut
        title={text.title}
        back={{ href: `/trials/${trialId}`, label: text.toPlan }}
        refusal={asked.refusal}
        words={words}
        language={language}
      />
    )
  const { after: amended, ...result } = asked.value
  await noteLook('result', trialId)
  const amendAt = `/trials/${trialId}/result/amendments`
  const { costs } = result
  const forms = resultForms({ result, measureCode: result.trial.measure.code, bakery, language })
  const { comparison, limits, stage } = result.analysis
  const { headline, lead } = amendedHeadline(amended, result, bakery, language) ?? headlineOf(result, costs, forms)
  const warnings = comparison ? conditionWarnings(comparison, bakery, forms).map(({ sentence }) => sentence) : []
  const fullLead = paragraph([lead, ...warnings], language)
  const marks = <MarksSection marks={result.marks} form={bakery} words={words} language={language} />
  const cost = costs ? (
    <CostTable result={result} comparison={comparison} costs={costs} bakery={bakery} forms={forms} />
  ) : null

  return (
    <Sheet
      kicker={say(text.kicker, language, { number: result.trial.number })}
      headline={headline}
      lead={fullLead || undefined}
      margin={{ label: text.about, entries: marginEntries(result, bakery, forms) }}
    >
      <SealNotice sealed={result.sealed} text={text.seal} language={language} />
      {comparison ? (
        <>
          {amended ? <AmendmentNotice amended={amended} amendAt={amendAt} bakery={bakery} language={language} /> : null}
          <CountedOtherwise result={result} bakery={bakery} forms={forms} />
          <Section id="concluded" title={text.concluded}>
            <ArmSentenceList comparison={comparison} costs={costs} forms={forms} />
            {limits.length > 0 ? (
              <ul className="mt-2 max-w-measure list-disc pl-5">
                {limits.map(({ code, arm, facts }) => (
                  <li key={`${code} ${arm ?? ''}`}>
                    {fill(text.limits[code], language, {
                      ...facts,
                      ...(arm === null ? {} : { dough: forms.dough(arm) }),
                    })}
                  </li>
                ))}
              </ul>
            ) : null}
          </Section>
          {amended ? <SecondResult amended={amended} result={result} bakery={bakery} language={language} /> : null}
          <WhatNow result={result} language={language} />
          {cost ? (
            <SideBySide>
              <Picture result={result} comparison={comparison} forms={forms} />
              {cost}
            </SideBySide>
          ) : (
            <Picture result={result} comparison={comparison} forms={forms} />
          )}
          <NumbersTable result={result} comparison={comparison} forms={forms} />
          {costs ? <CostByUnit result={result} costs={costs} bakery={bakery} forms={forms} /> : null}
          {costs ? <SameVolume result={result} costs={costs} bakery={bakery} forms={forms} /> : null}
          {comparison.levels ? <LevelsTable result={result} levels={comparison.levels} forms={forms} /> : null}
          <WhatElse result={result} comparison={comparison} bakery={bakery} forms={forms} mind={desk.attention} />
          <WentWrong result={result} comparison={comparison} bakery={bakery} forms={forms} />
          {marks}
          <WeighedOtherwise result={result} bakery={bakery} forms={forms} />
          <Corrections result={result} bakery={bakery} forms={forms} />
          {result.knew ? <WhoKnew knew={result.knew} bakery={bakery} forms={forms} /> : null}
          <DoughsTable result={result} forms={forms} />
          {amended ? <AmendmentsSection amended={amended} bakery={bakery} language={language} /> : null}
          <MethodNote result={result} comparison={comparison} forms={forms} />
        </>
      ) : stage === 'in-progress' || stage === 'all-in' ? (
        <>
          <SoFar result={result} forms={forms} />
          <ProgressTable result={result} forms={forms} />
          <DoughsTable result={result} forms={forms} />
          <WentWrong result={result} comparison={null} bakery={bakery} forms={forms} />
          {marks}
          {cost}
        </>
      ) : null}
      <ToRepair result={result} forms={forms} />
      {result.mayClose ? <CloseForm result={result} bakery={bakery} forms={forms} /> : null}
      <ActionRow>
        <LinkButton tone="plain" href={`/trials/${trialId}`}>
          {text.toPlan}
        </LinkButton>
        {amended ? (
          <LinkButton tone="plain" href={amendAt}>
            {words.amendments.toPropose}
          </LinkButton>
        ) : null}
        {result.isEnded ? (
          <LinkButton tone="plain" href={`/trials/${trialId}/check`}>
            {words.evidence.toCheck}
          </LinkButton>
        ) : null}
        {result.mayImport ? (
          <LinkButton tone="plain" href={`/trials/${trialId}/import`}>
            {importing.title}
          </LinkButton>
        ) : null}
      </ActionRow>
      <PrintAnchor />
      <KeepCurrent seen={record.number} words={desk.live} />
    </Sheet>
  )
}
