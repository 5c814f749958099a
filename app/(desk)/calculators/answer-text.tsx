import { screenDigits, toScreen } from '@/lib/kitchen/calculators/on-screen'
import { Quantity } from '@/lib/ui/quantity'
import { answerNumber } from '@/lib/words/format/answer-number'
import { numberFormOf } from '@/lib/words/format/kept-forms'
import { writeNumber } from '@/lib/words/format/write-number'
import type { Sayer } from './sayer'

/** Whether a value is shown on a line: a number, a text, yes or no, nothing, or a list of such. */
export function isPlain(value: unknown): boolean {
  return (
    typeof value !== 'object' ||
    value === null ||
    (Array.isArray(value) && value.every((each) => typeof each !== 'object' || each === null))
  )
}

/** A value of an answer on a line, with its screen's unit unless a heading has it, and as exact as that unit is shown. */
export function AnswerText({
  name,
  value,
  sayer,
  unitAbove = false,
}: {
  name: string
  value: unknown
  sayer: Sayer
  unitAbove?: boolean
}) {
  const unit = unitAbove ? undefined : sayer.own.screenUnit(name)
  if (Array.isArray(value)) {
    if (value.length === 0) return sayer.text.nothing
    return (
      <>
        {value.map((each: unknown, i) => (
          <span key={i}>
            {i > 0 ? between : null}
            <PlainText name={name} value={each} unit={i === value.length - 1 ? unit : undefined} sayer={sayer} />
          </span>
        ))}
      </>
    )
  }
  return <PlainText name={name} value={value} unit={unit} sayer={sayer} />
}

/** Wider than a comma, so that a decimal comma is not taken for one. */
const between = '; '

function PlainText({
  name,
  value,
  unit,
  sayer: { own, text, locale },
}: {
  name: string
  value: unknown
  unit: string | undefined
  sayer: Sayer
}) {
  switch (typeof value) {
    case 'number': {
      const number = answerNumber(toScreen(name, value), { locale, ...screenDigits(name) })
      return unit ? <Quantity number={number} unit={unit} /> : number
    }
    case 'boolean':
      return value ? text.yes : text.no
    case 'string': {
      const amount = unit ? amountText(value, locale) : undefined
      if (amount && unit) return <Quantity number={amount} unit={unit} />
      return own.choice(value) ?? <span translate="no">{value}</span>
    }
    default:
      return value === null || value === undefined ? text.none : <span translate="no">{JSON.stringify(value)}</span>
  }
}

/** An amount in decimal text, never through a floating-point number; a hundredth of a cent is as fine as anybody reads. */
function amountText(value: string, locale: string): string | undefined {
  if (!/^-?\d+(\.\d+)?$/.test(value)) return undefined
  return writeNumber(numberFormOf(locale, { maximumFractionDigits: 4 }), value)
}
