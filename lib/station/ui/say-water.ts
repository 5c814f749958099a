import { HOTTEST_FOR_YEAST_C } from '../../calc/temperature/constants'
import type { DoughTemps, KnownWater, ToldWater, WaterFacts } from '../../kitchen/water/tell-water.input'
import { plainNumber } from '../../words/format/plain-number'
import { withUnit } from '../../words/format/with-unit'
import { say } from '../../words/say'
import type { Language, Words } from '../../words/words'
import { inTemperatureUnit } from './said-of-step'

/** So much above the tap takes so much hot water that its caution is said. */
const muchHotWaterC = 5

type How = {
  unit: '°C' | '°F'
  locale: string
  words: Words['stationWater']
  language: Language
}

type SaidWater = {
  /** The water itself; null where none can be told. */
  headline: string | null
  /** What is to be minded, before all else. */
  minded: string[]
  /** What it comes from. */
  behind: string[]
}

/** Why no water is told of any dough of a trial. */
export function sayNoWater(outcome: Exclude<WaterFacts['outcome'], 'known'>, words: How['words']): string {
  return outcome === 'waters-differ' ? words.differ : words.unknown[outcome]
}

/** The water of a dough in words, with what it comes from; what is missing is said in place of a guess. */
export function sayWater(
  told: ToldWater,
  facts: KnownWater,
  { flourC, roomC }: Pick<DoughTemps, 'flourC' | 'roomC'>,
  { unit, locale, words, language }: How,
): SaidWater {
  const temp = (tempC: number) => withUnit(plainNumber(inTemperatureUnit(tempC, unit), { locale }), unit)
  const warmer = (differenceC: number) =>
    withUnit(plainNumber(tenth(unit === '°F' ? differenceC * 1.8 : differenceC), { locale }), unit)
  const share = (pct: number) => withUnit(plainNumber(Math.round(pct), { locale }), '%')
  const none = { headline: null, minded: [], behind: [] }
  if (told.outcome === 'missing') {
    const [one, other] = told.missing
    return { ...none, minded: [words.missing[other ? 'both' : (one ?? 'both')]] }
  }
  if (told.outcome === 'not-worked-out' || flourC === null || roomC === null)
    return { ...none, minded: [words.notWorkedOut] }
  const { waterTempC, says, icePct, riseC, isRiseOdd, correctedBy } = told
  const { targetC, tapTempC, friction, mixer, isGuess } = facts
  const target = temp(targetC)
  const count = friction.doughs
  const from =
    correctedBy !== null
      ? say(words.friction.corrected, language, { code: correctedBy })
      : friction.by === 'learned'
        ? mixer.name === null
          ? say(words.friction.learnedOfTrial, language, { count })
          : say(words.friction.learned, language, { count, mixer: mixer.name })
        : friction.by === 'mixer' && mixer.name !== null
          ? say(words.friction.mixer, language, { mixer: mixer.name })
          : words.friction.usual
  const isHotWater = says === 'water' && tapTempC !== null && waterTempC > tapTempC + muchHotWaterC
  return {
    headline: says === 'water' ? say(words.is, language, { temp: temp(waterTempC) }) : null,
    minded: [
      ...(says === 'too-hot'
        ? [say(words.tooHot, language, { target, temp: temp(waterTempC), most: temp(HOTTEST_FOR_YEAST_C) })]
        : []),
      ...(says === 'too-cold' ? [say(words.tooCold, language, { target, temp: temp(waterTempC) })] : []),
      ...(says === 'ice'
        ? [
            icePct === null ? words.iceWithoutTap : say(words.ice, language, { share: share(icePct) }),
            words.meltsInMixer,
          ]
        : []),
      ...(says === 'water' && icePct !== null && icePct > 0 && tapTempC !== null
        ? [say(words.someIce, language, { tap: temp(tapTempC), share: share(icePct) })]
        : []),
      ...(isRiseOdd ? [say(words.odd, language, { rise: warmer(riseC) })] : []),
      ...(isHotWater ? [words.scalds] : []),
    ],
    behind: [
      say(words.from, language, { target, flour: temp(flourC), room: temp(roomC), rise: warmer(riseC) }),
      from,
      ...(friction.isGuess && friction.by === 'learned' && correctedBy === null ? [words.guess.friction] : []),
      ...(isGuess ? [words.guess.heat] : []),
    ],
  }
}

function tenth(value: number): number {
  // No zero has a sign.
  return Math.round(value * 10) / 10 + 0
}
