import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { askToRead } from '@/app/ask-to-read'
import { currentLanguage } from '@/app/language'
import { compareVersions } from '@/lib/kitchen/formulas/compare-versions'
import { changesAllergens } from '@/lib/kitchen/formulas/rules'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { UnreadDocument } from '../../../unread-document'
import { VersionDifferences } from '../../differences/version-differences'
import { VersionState } from '../../version-state'
import { CompareForm } from '../compare-form'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.history.compare }
}

type ComparePageProps = {
  params: Promise<{ formulaId: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export default async function ComparePage({ params, searchParams }: ComparePageProps) {
  const { formulaId } = await params
  const { from: fromId, to: toId } = await searchParams
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { formulas } = words
  const { compare: text, sheet } = formulas
  const { bakery } = await ask(getDesk)
  const asked = await askToRead(compareVersions, { formulaId, fromId, toId })
  if (!asked.ok)
    return (
      <UnreadDocument
        kicker={formulas.list.title}
        refusal={asked.refusal}
        ways={[{ href: `/formulas/${formulaId}`, label: sheet.backToFormula }]}
        language={language}
      />
    )
  const compared = asked.value
  const { formula, from, to, lines, measured, method, allergens } = compared
  const isSame = [...lines, ...measured, method].every((each) => each.isSame) && !changesAllergens(allergens)

  return (
    <Sheet
      kicker={formula.name}
      headline={say(isSame ? text.headlineSame : text.headline, language, { from: from.number, to: to.number })}
      margin={{
        label: text.margin,
        entries: [from, to].flatMap((side) => [
          {
            term: say(text.older, language, { number: side.number }),
            detail: <VersionState state={side.state} text={formulas} />,
          },
          { term: sheet.reason, detail: side.reason },
        ]),
      }}
    >
      <VersionDifferences
        compared={compared}
        from={from.number}
        to={to.number}
        words={words}
        units={bakery}
        language={language}
      />
      <Section id="compare" title={formulas.history.compare} screenOnly>
        <CompareForm formulaId={formula.id} versions={compared.versions} text={formulas} language={language} />
      </Section>
      <ActionRow>
        <LinkButton tone="plain" href={`/formulas/${formula.id}/compare?from=${to.id}&to=${from.id}`}>
          {text.swap}
        </LinkButton>
        <LinkButton tone="plain" href={`/formulas/${formula.id}`}>
          {say(sheet.back, language, { name: formula.name })}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
