import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listFormulas } from '@/lib/kitchen/formulas/list-formulas'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { Cell } from '@/lib/ui/cell'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { ListFoot } from '@/lib/ui/list-foot'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { StateWord } from '@/lib/ui/state-word'
import { formatDate, formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { formulaFormat } from '@/lib/words/format/formula-format'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.list.title }
}

export default async function FormulasPage({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>
}) {
  const { after } = await searchParams
  const language = await currentLanguage()
  const { formulas: words, desk } = wordsIn(language)
  const { list: text } = words
  const { bakery } = await ask(getDesk)
  const { formulas, inProductionCount, draftCount, mayDraft } = await ask(listFormulas, { after })
  const format = formulaFormat(bakery, words.units)

  if (formulas.count === 0) {
    return (
      <Sheet kicker={text.title} headline={text.headlineNone}>
        <Section id="formulas" title={text.title}>
          <EmptyState sentence={mayDraft ? text.empty : text.emptyNotYours}>
            {mayDraft ? (
              <LinkButton tone="go" href="/formulas/new">
                {text.add}
              </LinkButton>
            ) : null}
          </EmptyState>
        </Section>
      </Sheet>
    )
  }
  return (
    <Sheet
      kicker={text.title}
      headline={say(text.headline, language, { count: formulas.count })}
      actions={
        mayDraft ? (
          <LinkButton tone="go" href="/formulas/new">
            {text.add}
          </LinkButton>
        ) : undefined
      }
      margin={{
        label: text.margin,
        entries: [
          { term: text.inProduction, detail: inProductionCount, strong: true },
          { term: text.drafts, detail: draftCount },
          { term: text.production, detail: text.productionText },
        ],
      }}
    >
      <Section id="formulas" title={text.title}>
        <SheetTable
          caption={text.title}
          captionHidden
          columns={[
            { key: 'formula', label: text.formula },
            { key: 'version', label: text.inProduction },
            { key: 'since', label: text.since },
            { key: 'scaling', label: text.scaling, numeric: true },
            { key: 'open', label: text.open },
          ]}
        >
          {formulas.rows.map(({ id, name, inProduction, coming, drafts }) => (
            <tr key={id}>
              <Cell head>
                <PageLink href={`/formulas/${id}`}>{name}</PageLink>
              </Cell>
              <Cell>
                {inProduction ? (
                  <PageLink href={`/formulas/${id}/versions/${inProduction.versionId}`}>
                    {say(words.versionNumber, language, { number: inProduction.number })}
                  </PageLink>
                ) : (
                  <StateWord word={text.nothing} level={0} />
                )}
              </Cell>
              <Cell whole>{inProduction?.since ? formatDate(inProduction.since, bakery) : words.notThere}</Cell>
              <Cell numeric>{inProduction ? format.massShort(inProduction.scalingMassG) : words.notThere}</Cell>
              <Cell>
                {coming.map(({ versionId, number, from }) => (
                  <p key={versionId}>
                    <PageLink href={`/formulas/${id}/versions/${versionId}`}>
                      {say(text.comingFrom, language, { number, at: formatDateTime(from, bakery) })}
                    </PageLink>
                  </p>
                ))}
                {drafts.map(({ versionId, number, isPartSigned }) => (
                  <p key={versionId}>
                    <PageLink href={`/formulas/${id}/versions/${versionId}`}>
                      {say(isPartSigned ? text.partSigned : text.draft, language, { number })}
                    </PageLink>
                  </p>
                ))}
                {coming.length + drafts.length === 0 ? words.notThere : null}
              </Cell>
            </tr>
          ))}
        </SheetTable>
        <ListFoot
          page={formulas}
          list={text.title}
          address="/formulas"
          anchor="formulas"
          words={desk}
          language={language}
        />
      </Section>
    </Sheet>
  )
}
