import type { ShownCostChange } from '@/lib/kitchen/formulas/shown-cost-change'
import { DefinitionList } from '@/lib/ui/definition-list'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { costChangeForms } from '../../formulas/cost-change-words'

type CostSectionProps = {
  cost: ShownCostChange
  from: number
  to: number
  text: Words['decisions']
  locale: string
  language: Language
}

/** What a loaf costs in ingredients before and after; only for those who see costs. */
export function CostSection({ cost, from, to, text, locale, language }: CostSectionProps) {
  const { before, after, difference, differencePct, limit } = costChangeForms(cost, locale)
  const day = formatDay(cost.day, locale)
  const limitText = say(cost.isBeyondLimit ? text.costBeyondLimit : text.costWithinLimit, language, { limit })
  const note =
    cost.latestPriceFrom === null
      ? say(text.costNoteNoPrice, language, { day })
      : say(text.costNote, language, { day, from: formatDay(cost.latestPriceFrom, locale) })
  return (
    <Section id="cost" title={text.cost} note={note}>
      {cost.unpriced.length > 0 || cost.mixedCurrencies ? (
        <Notice tone="warn" word={text.mind}>
          {cost.unpriced.length > 0 ? say(text.costUnpriced, language, { names: cost.unpriced }) : text.costMixed}
        </Notice>
      ) : null}
      <DefinitionList
        entries={[
          { term: say(text.costBefore, language, { number: from }), detail: before ?? text.costUnknown },
          { term: say(text.costAfter, language, { number: to }), detail: after ?? text.costUnknown },
          {
            term: text.costDifference,
            strong: true,
            detail:
              difference === null || differencePct === null ? (
                text.costUnknown
              ) : (
                <>
                  {say(text.costDifferenceText, language, { money: difference, pct: differencePct })}
                  <span className="block text-small font-normal text-ink-2">{limitText}</span>
                </>
              ),
          },
        ]}
      />
    </Section>
  )
}
