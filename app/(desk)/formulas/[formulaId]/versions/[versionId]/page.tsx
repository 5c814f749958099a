import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { askToRead } from '@/app/ask-to-read'
import { currentLanguage } from '@/app/language'
import { getVersion } from '@/lib/kitchen/formulas/get-version'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { DefinitionList } from '@/lib/ui/definition-list'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SideBySide } from '@/lib/ui/side-by-side'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { UnreadDocument } from '../../../../unread-document'
import { formulaFormat } from '@/lib/words/format/formula-format'
import { SignForm } from '../../../signing/sign-form'
import { Signatures } from '../../../signing/signatures'
import { VersionState } from '../../../version-state'
import { DraftForm } from './draft-form'
import { Allergens } from './allergens'
import { LinesTable } from './lines-table'
import { NutrientTable } from './nutrient-table'
import { DiscardForm } from './discard-form'
import { totalsOf } from './totals-of'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.list.title }
}

export default async function VersionPage({ params }: { params: Promise<{ formulaId: string; versionId: string }> }) {
  const { formulaId, versionId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { formulas: text, desk } = words
  const { sheet } = text
  const { bakery } = await ask(getDesk)
  const asked = await askToRead(getVersion, { formulaId, versionId })
  if (!asked.ok)
    return (
      <UnreadDocument
        kicker={text.list.title}
        refusal={asked.refusal}
        ways={[{ href: `/formulas/${formulaId}`, label: sheet.backToFormula }]}
        language={language}
      />
    )
  const version = asked.value
  const { content, figures, number, formula } = version
  const format = formulaFormat(bakery, text.units)
  const isPartSigned = version.state === 'draft' && version.signatures.length > 0
  const day = version.effectiveAt ? formatDate(version.effectiveAt, bakery) : ''
  const headlines = {
    draft: say(isPartSigned ? sheet.headlinePart : sheet.headlineDraft, language, { number }),
    discarded: say(sheet.headlineDiscarded, language, { number }),
    coming: say(sheet.headlineComing, language, {
      number,
      at: version.effectiveAt ? formatDateTime(version.effectiveAt, bakery) : '',
    }),
    'in-production': say(sheet.headlineNow, language, { number, at: day }),
    withdrawn: say(sheet.headlineGone, language, { number, at: day }),
  }
  const base = `/formulas/${formula.id}`
  const other = version.from ?? version.versions.find(({ id }) => id !== version.id)
  const maySign = version.signing !== null && version.signing.bar === null && !version.signing.hasMovedOn

  return (
    <Sheet
      kicker={formula.name}
      headline={headlines[version.state]}
      lead={<span className="whitespace-pre-line">{content.version.reason}</span>}
      margin={{
        label: sheet.margin,
        entries: [
          {
            term: text.history.state,
            detail: <VersionState state={version.state} isPartSigned={isPartSigned} text={text} />,
          },
          {
            term: sheet.batch,
            detail: say(sheet.batchText, language, {
              pieces: format.count(content.batch.pieces),
              mass: format.massShort(content.batch.scalingMassG),
            }),
            strong: true,
          },
          ...(figures ? totalsOf(figures, content.batch.doughLossPct, text, format, language) : []),
        ],
      }}
    >
      {version.isWhole ? null : (
        <Notice tone="stop" word={desk.attention}>
          {sheet.notWhole}
        </Notice>
      )}
      <SideBySide>
        <Section id="lines" title={sheet.lines} note={sheet.linesNote}>
          <LinesTable content={content} figures={figures} text={text} format={format} language={language} />
        </Section>
        <div>
          <Section id="process" title={sheet.process}>
            <DefinitionList
              entries={[
                { term: sheet.mixTime, detail: format.minutes(content.process.mixTimeS) },
                { term: sheet.doughTemp, detail: format.temp(content.process.doughTempC), strong: true },
                { term: sheet.bulkTime, detail: format.minutes(content.process.bulkTimeS) },
                { term: sheet.proofTime, detail: format.minutes(content.process.proofTimeS) },
                { term: sheet.bakeTemp, detail: format.temp(content.process.bakeTempC) },
                { term: sheet.bakeTime, detail: format.minutes(content.process.bakeTimeS) },
              ]}
            />
          </Section>
          <Section id="method" title={sheet.method}>
            <p className="max-w-measure whitespace-pre-line">{content.process.method || sheet.noMethod}</p>
          </Section>
        </div>
      </SideBySide>
      <Allergens version={version} words={words} language={language} />
      {figures ? (
        <Section id="holds" title={sheet.holds} note={sheet.holdsNote}>
          <NutrientTable
            figures={figures}
            ingredients={version.ingredients}
            text={text}
            format={format}
            language={language}
          />
        </Section>
      ) : null}
      <Section id="signatures" title={sheet.signatures}>
        <Signatures version={version} words={words} bakery={bakery} language={language} />
      </Section>
      {version.signing && version.decision ? (
        <Notice tone="plain" word={sheet.decided}>
          {sheet.decidedText}{' '}
          <PageLink href={`/decisions/${version.decision.id}`}>
            {say(sheet.decisionLink, language, { number: version.decision.number })}
          </PageLink>
        </Notice>
      ) : version.signing ? (
        <SignForm version={version} signing={version.signing} words={words} bakery={bakery} language={language} />
      ) : null}
      {version.mayChange ? (
        <Section id="discard" title={sheet.discard} note={sheet.discardNote} screenOnly>
          <DiscardForm versionId={version.id} revision={version.revision} text={sheet} />
        </Section>
      ) : null}
      {version.mayDraft ? (
        <Section id="draft" title={sheet.draft} note={sheet.draftNote} screenOnly>
          <DraftForm fromVersionId={version.id} text={sheet} />
        </Section>
      ) : null}
      <ActionRow>
        {version.mayChange ? (
          <LinkButton tone={maySign ? 'plain' : 'go'} href={`${base}/versions/${version.id}/edit`}>
            {sheet.change}
          </LinkButton>
        ) : null}
        {other ? (
          <LinkButton
            tone="plain"
            href={`${base}/compare?from=${other.number < number ? other.id : version.id}&to=${other.number < number ? version.id : other.id}`}
          >
            {say(sheet.compare, language, { number: other.number })}
          </LinkButton>
        ) : null}
        {version.decision ? (
          <LinkButton tone="plain" href={`/decisions/${version.decision.id}`}>
            {say(sheet.decisionLink, language, { number: version.decision.number })}
          </LinkButton>
        ) : null}
        <LinkButton tone="plain" href={base}>
          {say(sheet.back, language, { name: formula.name })}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
