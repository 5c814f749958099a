import 'server-only'
import type { Arm } from '@/lib/ui/arm-shape'
import { formatLoafMoney } from '@/lib/words/format/loaf-money'
import { formatNumber } from '@/lib/words/format/number'
import { plainNumber } from '@/lib/words/format/plain-number'
import { withUnit } from '@/lib/words/format/with-unit'
import { measureInText } from '@/lib/words/measure-in-text'
import { measureName } from '@/lib/words/measure-name'
import { sayName } from '@/lib/words/say'
import { wordsIn, type Language } from '@/lib/words/words'
import type { FormedTrial, ShownArm, ShownBakery } from './shown-result'

const letters = ['control', 'A', 'B', 'C', 'D', 'E', 'F'] as const satisfies readonly Arm[]

/** Digits of a percentage. */
const pctDigits = 1

/** A smaller p is only said to be below it. */
const leastP = 0.001

/** How the numbers and names of one trial are written in this bakery. */
export function resultForms(q: {
  result: FormedTrial
  measureCode: string | null
  bakery: ShownBakery
  language: Language
}) {
  const { declared, analysis } = q.result
  const { locale } = q.bakery
  const words = wordsIn(q.language)
  const { results: text } = words
  const { unit, digits } = declared.measure
  const measure = { code: q.measureCode, name: declared.measure.name }
  const arms = analysis.comparison?.arms ?? []
  const inPct = declared.marginUnit === 'pct' && arms.every(({ effect }) => effect === null || effect.pct !== null)
  const axisDigits = inPct ? pctDigits : digits + 1
  const letter = (position: number): Arm => letters[position] ?? 'control'
  const below = `< ${formatNumber(leastP, { locale, digits: 3 })}`
  const p = (value: number) => (value < leastP ? below : formatNumber(value, { locale, digits: 3 }))
  return {
    language: q.language,
    text,
    /** By what the verdict was declared to be said of. */
    verdicts: declared.holdsFor === 'these_days' ? text.onTheseDays : text,
    isOfTheseDays: declared.holdsFor === 'these_days',
    locale,
    letter,
    hasGoodDirection: declared.measure.direction !== 'none',
    dough: (position: number) =>
      position === 0 ? text.control : sayName(text.dough, q.language, { letter: letter(position) }),
    measureInText: measureInText(measure, words, q.language),
    measureName: measureName(measure, words),
    unit,
    /** Differences are told in the unit in which the margin was declared. */
    axisUnit: inPct ? '%' : unit,
    margin: withUnit(plainNumber(declared.margin, { locale }), declared.marginUnit === 'pct' ? '%' : unit),
    confidence: withUnit(plainNumber(declared.confidencePct, { locale }), '%'),
    value: (value: number) => formatNumber(value, { locale, digits }),
    spread: (value: number) => formatNumber(value, { locale, digits: digits + 1 }),
    difference: (value: number) => formatNumber(value, { locale, digits: digits + 1, signed: true }),
    pct: (value: number) => formatNumber(value, { locale, digits: pctDigits, signed: true }),
    amount: (value: number) =>
      withUnit(formatNumber(Math.abs(value), { locale, digits: axisDigits }), inPct ? '%' : unit),
    bound: (value: number) => formatNumber(value, { locale, digits: axisDigits, signed: true }),
    boundWithUnit: (value: number) =>
      withUnit(formatNumber(value, { locale, digits: axisDigits, signed: true }), inPct ? '%' : unit),
    onAxis: (effect: NonNullable<ShownArm['effect']>) =>
      inPct
        ? { estimate: effect.pct ?? 0, low: effect.lowPct, high: effect.highPct }
        : { estimate: effect.estimate, low: effect.low, high: effect.high },
    /** A difference in the measure's unit as it stands on the axis. */
    toAxis: (difference: number) => (inPct ? (100 * difference) / (analysis.comparison?.controlMean ?? 1) : difference),
    p,
    pEquals: (value: number) => (value < leastP ? below : `= ${p(value)}`),
    plain: (value: number) => plainNumber(value, { locale }),
    number: (value: number, numberDigits: number) => formatNumber(value, { locale, digits: numberDigits }),
    loafMoney: (amount: string, currency: string) => formatLoafMoney(amount, { locale, currency }),
  }
}

export type ResultForms = ReturnType<typeof resultForms>
