import type { PlanWater, WaterPart } from '@/lib/kitchen/trials/plan-types'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { PlanFormat } from '@/lib/words/format/plan-format'
import { waterTemp } from './water-temp'

/** From here water scalds in seconds to minutes, and harms yeast that it touches, °C. Common practice, no source. */
const scaldsFromC = 50
const harmsYeastFromC = 45

type MixingWaterProps = {
  water: PlanWater
  doughTempC: number
  words: Words['mixing']
  format: PlanFormat
  language: Language
}

/** What the mixing water of a dough is made of, how, and what to mind. */
export function MixingWater({ water, doughTempC, words: { water: text }, format, language }: MixingWaterProps) {
  if (water.outcome !== 'known') return <p>{text.unknown[water.outcome]}</p>
  const { way, resolutionG } = water
  const inWords = ({ from, massG, tempC }: WaterPart) =>
    say(text.parts[from], language, { mass: format.weighedInUnit(massG, resolutionG), temp: format.temp(tempC) })
  const isIced = way.parts.some(({ from }) => from === 'ice')
  const temp = waterTemp(water, format)
  const how =
    way.parts.length === 0
      ? null
      : isIced
        ? text.ice
        : temp === null
          ? null
          : say(way.parts.length > 1 ? text.mix : text.one, language, { temp })
  const cautions = [
    ...(way.parts.some(({ from, tempC }) => from === 'hot' && tempC >= scaldsFromC) ? [text.scalds] : []),
    ...((way.outcome === 'mix' ? water.waterTempC : way.nearestTempC) > harmsYeastFromC ? [text.yeast] : []),
  ]
  const guesses = [
    ...new Set(
      way.parts.flatMap(({ from, isUsual }) =>
        isUsual && (from === 'hot' || from === 'ice') ? [text.usual[from]] : [],
      ),
    ),
    ...(water.isGuess ? [text.guess] : []),
  ]
  return (
    <div className="max-w-measure">
      {way.outcome === 'not-possible' ? (
        <p>
          <strong className="text-warn">
            {say(text.not[way.reason], language, {
              dough: format.temp(doughTempC),
              temp: format.temp(water.waterTempC),
            })}
          </strong>{' '}
          {way.reason === 'hotter-than-allowed' ? text.warmer : text.cooler}
        </p>
      ) : null}
      {way.parts.length > 0 ? (
        <>
          {way.outcome === 'not-possible' ? <p>{text.nearest}</p> : null}
          <ul className="font-bold">
            {way.parts.map((part) => (
              <li key={part.from}>{inWords(part)}</li>
            ))}
          </ul>
        </>
      ) : null}
      {how === null ? null : <p>{how}</p>}
      {way.outcome === 'not-possible' && way.doughTempC !== null ? (
        <p>{say(text.comesOut, language, { temp: format.tempFine(way.doughTempC) })}</p>
      ) : null}
      {cautions.map((line) => (
        <p key={line}>
          <strong>{line}</strong>
        </p>
      ))}
      {guesses.map((line) => (
        <p key={line} className="text-small text-ink-2">
          {line}
        </p>
      ))}
    </div>
  )
}
