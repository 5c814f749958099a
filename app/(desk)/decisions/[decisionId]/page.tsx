import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { askToRead } from '@/app/ask-to-read'
import { currentLanguage } from '@/app/language'
import { noteLook } from '@/app/note-look'
import { getDecision } from '@/lib/kitchen/decisions/get-decision'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Sheet } from '@/lib/ui/sheet'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { UnreadDocument } from '../../unread-document'
import { DecisionState } from '../decision-state'
import { ChangeShown, ChangeSigned } from './change-part'
import { EvidenceSection } from './evidence-section'
import { headlineOf } from './headline-of'
import { Notices } from './notices'
import { TakeBackForm } from './take-back-form'
import { PrintAnchor } from '../../print-anchor'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).decisions.title }
}

export default async function DecisionPage({ params }: { params: Promise<{ decisionId: string }> }) {
  const { decisionId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { decisions: text } = words
  const [{ bakery }, asked] = await Promise.all([ask(getDesk), askToRead(getDecision, { decisionId })])
  if (!asked.ok)
    return (
      <UnreadDocument
        kicker={text.title}
        refusal={asked.refusal}
        ways={[{ href: '/decisions', label: text.back }]}
        language={language}
      />
    )
  const decision = asked.value
  await noteLook('evidence', decision.trial.id)
  const { version, drafted, control, formula, trial, evidence } = decision
  const versionHref = version && `/formulas/${formula.id}/versions/${version.id}`
  return (
    <Sheet
      kicker={say(text.kicker, language, { number: decision.number })}
      headline={headlineOf(decision, drafted?.signing?.missing ?? [], words, bakery, language)}
      lead={<span className="whitespace-pre-line">{decision.reason}</span>}
      margin={{
        label: text.aboutThis,
        entries: [
          { term: text.state, detail: <DecisionState state={decision.state} text={text} />, strong: true },
          {
            term: text.decidedBy,
            detail: say(text.byText, language, { name: decision.decidedBy, at: formatDate(decision.at, bakery) }),
          },
          {
            term: text.trial,
            detail: (
              <PageLink href={`/trials/${trial.id}/result`}>
                {say(text.trialLink, language, { number: trial.number, question: trial.question })}
              </PageLink>
            ),
          },
          { term: text.formula, detail: <PageLink href={`/formulas/${formula.id}`}>{formula.name}</PageLink> },
          ...(version ? [{ term: text.control, detail: say(text.version, language, { number: control.number }) }] : []),
        ],
      }}
    >
      <Notices decision={decision} bakery={bakery} language={language} />
      <ChangeShown decision={decision} bakery={bakery} language={language} />
      {evidence ? (
        <EvidenceSection decision={decision} evidence={evidence} bakery={bakery} language={language} />
      ) : null}
      {drafted ? <ChangeSigned version={drafted} bakery={bakery} language={language} /> : null}
      {decision.mayTakeBack ? <TakeBackForm decision={decision} text={text} /> : null}
      <ActionRow>
        {version && versionHref ? (
          <LinkButton tone="plain" href={versionHref}>
            {say(text.toVersion, language, { number: version.number })}
          </LinkButton>
        ) : null}
        <LinkButton tone="plain" href={`/trials/${decision.trial.id}/check`}>
          {wordsIn(language).evidence.toCheck}
        </LinkButton>
        <LinkButton tone="plain" href="/decisions">
          {text.back}
        </LinkButton>
      </ActionRow>
      <PrintAnchor />
    </Sheet>
  )
}
