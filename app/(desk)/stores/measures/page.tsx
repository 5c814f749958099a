import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { listMeasures } from '@/lib/kitchen/stores/list-measures'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { MeasureTable } from './measure-table'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).measures.title }
}

export default async function MeasuresPage() {
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { measures: text } = words
  const { bakery } = await ask(getDesk)
  const { measures, mayEdit } = await ask(listMeasures)
  const own = measures.filter(({ code }) => code === null)
  const usual = measures.filter(({ code }) => code !== null)
  const shared = { words, locale: bakery.locale, language }
  return (
    <Sheet
      kicker={text.title}
      headline={own.length === 0 ? text.headlineNone : say(text.headline, language, { count: own.length })}
      actions={
        <>
          {mayEdit ? (
            <LinkButton tone="go" href="/stores/measures/new">
              {text.add}
            </LinkButton>
          ) : null}
          <LinkButton tone="plain" href="/stores">
            {text.toStores}
          </LinkButton>
        </>
      }
      margin={{ label: text.about, entries: [{ term: text.whatFor, detail: text.whatForText }] }}
    >
      <Section id="own" title={text.own}>
        {own.length === 0 ? (
          <EmptyState sentence={text.ownNone} />
        ) : (
          <MeasureTable measures={own} caption={text.own} {...shared} />
        )}
      </Section>
      <Section id="usual" title={text.usual}>
        <MeasureTable measures={usual} caption={text.usual} {...shared} />
      </Section>
    </Sheet>
  )
}
