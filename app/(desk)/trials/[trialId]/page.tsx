import type { Metadata } from 'next'
import { ask, askUnless } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getRepairs } from '@/lib/kitchen/repairs/get-repairs'
import { getPlan } from '@/lib/kitchen/trials/get-plan'
import { ActionRow } from '@/lib/ui/action-row'
import { DefinitionList } from '@/lib/ui/definition-list'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { planCautions } from '@/lib/words/plan-cautions'
import { wordsIn } from '@/lib/words/words'
import { KeepCurrent } from '../../keep-current'
import { UnreadDocument } from '../../unread-document'
import { NotWorkedOut, notWorkedOutCodes } from '../../not-worked-out'
import { planFormat } from '@/lib/words/format/plan-format'
import { TrialState } from '../trial-state'
import { ArmSection } from './arm-section'
import { CostsSection } from './costs-section'
import { DecisionSection } from './decision-section'
import { DeclaredSection } from './declared-section'
import { DoughsTable } from './doughs-table'
import { DatesForm } from './dates-form'
import { KnowerList } from './knower-list'
import { LinesForm } from './lines-form'
import { OrderSection } from './order-section'
import { PlanFault } from './plan-fault'
import { PowerSection } from './power-section'
import { RepairsSection } from './repairs-section'
import { WaysOn } from './ways-on'
import { PrintAnchor } from '../../print-anchor'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).trials.title }
}

export default async function PlanPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { trials, desk } = words
  const { plan: text } = trials
  const { bakery, record } = await ask(getDesk)
  const asked = await askUnless(getPlan, { trialId }, [
    'plan-not-possible',
    'dose-without-active',
    'no-tap',
    'unknown-format',
    'damaged-text',
    ...notWorkedOutCodes,
  ])
  if (!asked.ok && (asked.refusal.code === 'unknown-format' || asked.refusal.code === 'damaged-text')) {
    const ways = [
      { href: `/trials/${trialId}/result`, label: text.result },
      { href: '/trials', label: text.back },
    ]
    return <UnreadDocument kicker={trials.title} refusal={asked.refusal} ways={ways} language={language} />
  }
  if (!asked.ok && notWorkedOutCodes.includes(asked.refusal.code))
    return (
      <NotWorkedOut
        title={trials.title}
        back={{ href: '/trials', label: text.back }}
        refusal={asked.refusal}
        words={words}
        language={language}
      />
    )
  if (!asked.ok) return <PlanFault trialId={trialId} refusal={asked.refusal} words={words} language={language} />
  const { trial, plan, may, days, ...rest } = asked.value
  const repairs = await ask(getRepairs, { trialId })
  const format = planFormat(bakery)
  const part = { plan, words, format, language }
  const last = trial.decisions.at(-1)
  const hash = trial.planHash?.slice(0, 12) ?? ''

  return (
    <Sheet
      kicker={say(text.kicker, language, { number: trial.number })}
      actions={<WaysOn trial={trial} may={may} text={text} />}
      headline={plan.declared.question}
      margin={{
        label: text.about,
        entries: [
          { term: text.stateTerm, detail: <TrialState standing={trial.standing} text={trials} />, strong: true },
          {
            term: text.formula,
            detail: say(text.formulaText, language, {
              name: plan.declared.formula.name,
              number: plan.declared.controlVersion.number,
            }),
          },
          { term: trial.proposedAt ? text.proposedBy : text.draftedBy, detail: trial.proposedBy },
          ...(trial.proposedAt ? [{ term: text.proposedAt, detail: formatDateTime(trial.proposedAt, bakery) }] : []),
          { term: text.doughsInAll, detail: plan.size.doughs },
          { term: text.piecesInAll, detail: plan.size.pieces },
        ],
      }}
    >
      {trial.standing === 'sent_back' && last ? (
        <Notice tone="warn" word={text.sentBackWord}>
          {say(text.sentBackText, language, {
            name: last.personName,
            at: formatDateTime(last.at, bakery),
            note: last.note,
          })}
        </Notice>
      ) : null}
      {trial.state === 'draft' ? (
        <Notice tone="plain" word={text.draftWord}>
          {text.draftText}
        </Notice>
      ) : null}
      {trial.state === 'proposed' ? (
        <Notice tone="plain" word={text.proposedWord}>
          {say(text.proposedText, language, { hash })}
        </Notice>
      ) : null}
      {trial.isFrozen ? (
        <Notice tone="ok" word={text.frozenWord}>
          {say(text.frozenText, language, { hash })}
        </Notice>
      ) : null}

      <DeclaredSection {...part} measureCode={trial.measureCode} />
      <Section id="doughs" title={text.doughs} note={text.doughsNote}>
        <DoughsTable {...part} />
        <p className="mt-2 max-w-measure text-small text-ink-2">{text.totalsNote}</p>
      </Section>
      {plan.arms.map((arm) => (
        <ArmSection
          key={arm.position}
          arm={arm}
          doughTempC={plan.process.doughTempC}
          words={words}
          format={format}
          language={language}
          locale={bakery.locale}
        />
      ))}
      <p className="mt-3 max-w-measure text-small text-ink-2">
        {say(text.waterNote, language, { temp: format.temp(plan.process.doughTempC) })}
      </p>
      {rest.choosing ? (
        <LinesForm trial={trial} choosing={rest.choosing} words={words} format={format} language={language} />
      ) : null}
      <OrderSection {...part} days={days} locale={bakery.locale} />
      <RepairsSection
        trialId={trial.id}
        repairs={repairs}
        mayDate={may.date}
        bakery={bakery}
        words={words}
        language={language}
      />
      {rest.knowers.length > 0 ? (
        <Section id="knowers" title={words.results.knew.title} note={words.results.knew.note}>
          <KnowerList knowers={rest.knowers} words={words} bakery={bakery} language={language} />
        </Section>
      ) : null}
      {may.date ? <DatesForm trialId={trial.id} days={days} text={text} language={language} /> : null}
      <PowerSection {...part} isFrozen={trial.isFrozen} />
      {rest.costs ? (
        <CostsSection plan={plan} costs={rest.costs} words={words} language={language} locale={bakery.locale} />
      ) : null}
      <Section id="cautions" title={text.cautions}>
        <ul className="max-w-measure list-disc pl-5">
          {planCautions(words).map((caution) => (
            <li key={caution} className="py-0.5">
              {caution}
            </li>
          ))}
        </ul>
      </Section>
      {trial.decisions.length > 0 || trial.closedWhy !== null ? (
        <Section id="decisions" title={text.decisions}>
          <DefinitionList
            entries={[
              ...trial.decisions.map((decision) => ({
                term: formatDateTime(decision.at, bakery),
                detail: (
                  <>
                    <span className="block">{decision.meaning}</span>
                    <span className="block text-ink-2">
                      {say(text.decisionBy, language, { name: decision.personName, role: desk.roles[decision.role] })}
                    </span>
                    {decision.note ? <span className="block whitespace-pre-line">{decision.note}</span> : null}
                  </>
                ),
              })),
              ...(trial.state === 'stopped' && trial.closedAt
                ? [
                    {
                      term: text.stopped,
                      detail: `${formatDateTime(trial.closedAt, bakery)}: ${trial.closedWhy ?? ''}`,
                    },
                  ]
                : []),
            ]}
          />
        </Section>
      ) : null}
      <DecisionSection trial={trial} may={may} words={words} />
      <ActionRow>
        {plan.order && trial.state !== 'declined' ? (
          <LinkButton tone="plain" href={`/trials/${trial.id}/weigh-out`}>
            {text.weighOut}
          </LinkButton>
        ) : null}
        {trial.isFrozen ? (
          <LinkButton tone="plain" href={`/trials/${trial.id}/result`}>
            {text.result}
          </LinkButton>
        ) : null}
        {may.import ? (
          <LinkButton tone="plain" href={`/trials/${trial.id}/import`}>
            {words.importing.title}
          </LinkButton>
        ) : null}
        <LinkButton tone="plain" href="/trials">
          {text.back}
        </LinkButton>
      </ActionRow>
      <PrintAnchor />
      {/* A plan that somebody reads before they sign it stays as they read it. */}
      {trial.isFrozen ? <KeepCurrent seen={record.number} words={desk.live} /> : null}
    </Sheet>
  )
}
