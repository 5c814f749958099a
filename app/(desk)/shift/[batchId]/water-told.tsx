import { sayNoWater, sayWater } from '@/lib/station/ui/say-water'
import { Section } from '@/lib/ui/section'
import type { Language, Words } from '@/lib/words/words'
import type { BakeryShown, BatchShown } from './batch-view'

type WaterToldProps = { batch: BatchShown; bakery: BakeryShown; words: Words['stationWater']; language: Language }

/** The water of a dough before it is mixed, and what it comes from. */
export function WaterTold({ batch: { water }, bakery, words, language }: WaterToldProps) {
  if (!water) return null
  const unit = bakery.temperatureUnits === 'fahrenheit' ? '°F' : '°C'
  const said =
    water.outcome === 'known'
      ? sayWater(water.told, water.facts, water.temps, { unit, locale: bakery.locale, words, language })
      : { headline: null, minded: [sayNoWater(water.outcome, words)], behind: [] }
  return (
    <Section id="water" title={words.title}>
      {said.headline && <p className="text-lead font-bold">{said.headline}</p>}
      {said.minded.map((each) => (
        <p key={each} className="mt-1 max-w-measure font-bold">
          {each}
        </p>
      ))}
      {said.behind.map((each) => (
        <p key={each} className="mt-1 max-w-measure">
          {each}
        </p>
      ))}
    </Section>
  )
}
