import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getFormula } from '@/lib/kitchen/formulas/get-formula'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { VersionState } from '../version-state'
import { CompareForm } from './compare-form'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.list.title }
}

export default async function FormulaPage({ params }: { params: Promise<{ formulaId: string }> }) {
  const { formulaId } = await params
  const language = await currentLanguage()
  const { formulas: words, desk } = wordsIn(language)
  const { history: text } = words
  const { bakery } = await ask(getDesk)
  const formula = await ask(getFormula, { formulaId })
  const { inProduction, versions } = formula
  const first = versions.at(-1)
  const headline = inProduction?.since
    ? say(text.headline, language, { number: inProduction.number, at: formatDate(inProduction.since, bakery) })
    : text.headlineNone

  return (
    <Sheet
      kicker={formula.name}
      headline={headline}
      margin={{
        label: text.margin,
        entries: [
          { term: text.versions, detail: versions.length, strong: true },
          ...(first ? [{ term: text.first, detail: formatDate(first.createdAt, bakery) }] : []),
        ],
      }}
    >
      <Section id="versions" title={text.title}>
        <SheetTable
          caption={text.title}
          captionHidden
          columns={[
            { key: 'version', label: text.version },
            { key: 'state', label: text.state },
            { key: 'why', label: text.why },
            { key: 'drafted', label: text.drafted },
            { key: 'signed', label: text.signed },
            { key: 'holds', label: text.holds },
          ]}
        >
          {versions.map((version) => (
            <tr key={version.id}>
              <Cell head>
                <PageLink href={`/formulas/${formula.id}/versions/${version.id}`} className="whitespace-nowrap">
                  {say(words.versionTitle, language, { number: version.number })}
                </PageLink>
              </Cell>
              <Cell whole>
                <VersionState state={version.state} isPartSigned={version.isPartSigned} text={words} />
              </Cell>
              <Cell>
                <p className="whitespace-pre-line">{version.reason}</p>
                {version.decision === null ? null : (
                  <PageLink href={`/decisions/${version.decision.id}`}>
                    {say(words.sheet.decisionLink, language, { number: version.decision.number })}
                  </PageLink>
                )}
                {version.fromNumber === null ? null : (
                  <p className="text-small text-ink-2">{say(text.from, language, { number: version.fromNumber })}</p>
                )}
              </Cell>
              <Cell>
                {say(text.by, language, { name: version.draftedBy, at: formatDate(version.createdAt, bakery) })}
              </Cell>
              <Cell>
                {version.signatures.map((signature) => (
                  <p key={signature.at.toISOString()}>
                    {say(text.signedBy, language, {
                      name: signature.personName,
                      role: desk.roles[signature.role],
                      at: formatDate(signature.at, bakery),
                    })}
                    {signature.byProposer ? (
                      <span className="block text-small text-ink-2">
                        {version.signedAt && version.signatures.length === 1 ? text.byProposer : text.byDrafter}
                      </span>
                    ) : null}
                  </p>
                ))}
                {version.signatures.length === 0 ? words.notThere : null}
              </Cell>
              <Cell whole>{version.effectiveAt ? formatDateTime(version.effectiveAt, bakery) : words.notThere}</Cell>
            </tr>
          ))}
        </SheetTable>
      </Section>
      {versions.length > 1 ? (
        <Section id="compare" title={text.compare} screenOnly>
          <CompareForm formulaId={formula.id} versions={versions} text={words} language={language} />
        </Section>
      ) : null}
      <ActionRow>
        <LinkButton tone="plain" href="/formulas">
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
