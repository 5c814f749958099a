import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { noteLook } from '@/app/note-look'
import { getChoices } from '@/lib/kitchen/decisions/get-choices'
import { notShown } from '@/lib/kitchen/decisions/rules'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Sheet } from '@/lib/ui/sheet'
import { paragraph } from '@/lib/words/paragraph'
import { say, sayName } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { NotWorkedOut, notWorkedOutCodes } from '../../../not-worked-out'
import { AmendmentNotice } from '../result/amendments/amendment-notice'
import { marginEntries } from '../result/margin-entries'
import { resultForms } from '../result/result-forms'
import { armSentences } from '../result/say-result'
import { ChangeForm, KeepForm } from './decide-forms'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).decisions.title }
}

export default async function DecidePage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { decisions, desk } = words
  const { decide: text } = decisions
  const { bakery } = await ask(getDesk)
  // First, because it asks for the right to decide: whoever has not got it learns nothing of the trial.
  const choices = await ask(getChoices, { trialId })
  const asked = await askUnless(getResult, { trialId }, notWorkedOutCodes)
  if (!asked.ok)
    return (
      <NotWorkedOut
        title={decisions.title}
        back={{ href: `/trials/${trialId}`, label: words.results.toPlan }}
        refusal={asked.refusal}
        words={words}
        language={language}
      />
    )
  const { after: amended, ...result } = asked.value
  await noteLook('result', trialId)
  const { costs } = result
  const forms = resultForms({ result, measureCode: result.trial.measure.code, bakery, language })
  const { trial, inProduction, decision } = choices
  const { comparison, lessFavourableOf } = result.headline
  const sentences = comparison ? armSentences(comparison, costs, forms) : []
  const arms = trial.arms.flatMap(({ id, position, name }) => {
    const shown = comparison?.arms.find(({ arm }) => arm === position)
    if (!comparison || !shown || shown.batches === 0) return []
    const label = sayName(text.armName, language, { letter: forms.letter(position), name })
    const gap = notShown(shown, comparison.isIndication)
    const found = sentences.find(({ arm }) => arm.arm === position)
    return [
      {
        id,
        label,
        hint: paragraph(
          [found?.sentence, gap && say(decisions.notShown[gap], language, { dough: forms.dough(position) })],
          language,
        ),
      },
    ]
  })
  const isOpen = choices.isEnded && decision === null
  const isMoved = inProduction !== null && inProduction.id !== trial.controlVersion.id
  return (
    <Sheet
      kicker={say(text.kicker, language, { number: trial.number })}
      headline={say(text.headline, language, { formula: result.trial.formula.name })}
      lead={isOpen ? text.frozenText : undefined}
      margin={{
        label: text.margin,
        entries: [...marginEntries(result, bakery, forms), { term: text.then, detail: text.thenText }],
      }}
    >
      {choices.isEnded ? null : (
        <Notice tone="plain" word={desk.attention}>
          {text.notEnded}
        </Notice>
      )}
      {decision ? (
        <Notice tone="plain" word={desk.attention}>
          {say(text.decided, language, { name: decision.decidedBy })}{' '}
          <PageLink href={`/decisions/${decision.id}`}>
            {say(text.toDecision, language, { number: decision.number })}
          </PageLink>
        </Notice>
      ) : null}
      {isOpen && isMoved ? (
        <Notice tone="warn" word={desk.attention}>
          {say(text.controlMoved, language, { control: trial.controlVersion.number, now: inProduction.number })}
        </Notice>
      ) : null}
      {isOpen && lessFavourableOf.length > 0 ? (
        <Notice tone="warn" word={desk.attention}>
          {say(decisions.lessFavourable, language, { codes: lessFavourableOf })}
        </Notice>
      ) : null}
      {isOpen && amended ? <AmendmentNotice amended={amended} bakery={bakery} language={language} isDeciding /> : null}
      {isOpen ? <ChangeForm trialId={trial.id} revision={trial.revision} arms={arms} text={text} /> : null}
      {isOpen && choices.mayKeep ? <KeepForm trialId={trial.id} revision={trial.revision} text={text} /> : null}
      <ActionRow>
        <LinkButton tone="plain" href={`/trials/${trial.id}/result`}>
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
