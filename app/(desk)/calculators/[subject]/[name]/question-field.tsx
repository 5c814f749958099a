import { CheckField } from '@/lib/ui/check-field'
import { CheckGroup } from '@/lib/ui/check-group'
import { ErrorLine } from '@/lib/ui/error-line'
import { Field } from '@/lib/ui/field'
import { RadioGroupField } from '@/lib/ui/radio-group-field'
import { SelectField } from '@/lib/ui/select-field'
import { TextAreaField } from '@/lib/ui/text-area-field'
import type { FieldShape, Shape } from '@/lib/kitchen/calculators/shape-of-schema'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import { isNumbers } from './read-typed'
import type { Typed } from './typed'

export type QuestionFieldProps = {
  field: FieldShape
  /** The field's name in the form. */
  at: string
  typed: Typed
  faults: ReadonlyMap<string, string>
  sayer: Sayer
}

/** Up to so many choices are shown at once. */
const mostInSight = 5

/** The control for one field of a question that is no table and no group: by what its value is. */
export function QuestionField({ field, at, typed, faults, sayer }: QuestionFieldProps) {
  const { name, shape } = field
  const { own, text } = sayer
  const mayStayEmpty = field.isOptional || field.isNullable
  const told = {
    name: at,
    label: own.field(name),
    error: faults.get(at),
    optionalWord: mayStayEmpty ? text.optional : undefined,
    required: !mayStayEmpty,
    defaultValue: typed[at]?.[0],
  }
  switch (shape.kind) {
    case 'number':
      return <Field {...told} type="number" unit={own.screenUnit(name)} width="short" />
    case 'text':
      return (
        <Field
          {...told}
          type="text"
          unit={own.screenUnit(name)}
          width={own.screenUnit(name) ? 'short' : 'medium'}
          autoComplete="off"
        />
      )
    case 'choice':
    case 'yes-no': {
      const options = optionsOf(shape, sayer)
      if (shape.kind === 'yes-no' && !mayStayEmpty)
        return <SelectField {...told} options={options} emptyLabel={text.choose} width="short" />
      if (mayStayEmpty) return <SelectField {...told} options={options} emptyLabel={text.leftOut} />
      if (options.length <= mostInSight) return <RadioGroupField {...told} options={options} />
      return <SelectField {...told} options={options} emptyLabel={text.choose} />
    }
    case 'list':
      if (shape.of.kind === 'choice')
        return (
          <ChoiceTicks
            at={at}
            label={told.label}
            error={told.error}
            options={optionsOf(shape.of, sayer)}
            ticked={typed[at] ?? []}
          />
        )
      return <TextAreaField {...told} rows={rowsFor(told.defaultValue)} hint={hintOf(shape.of, name, sayer)} />
    default:
      return <TextAreaField {...told} rows={rowsFor(told.defaultValue)} hint={text.otherHint} />
  }
}

/** The values of a choice with their words. */
export function optionsOf(shape: Shape, { own, text }: Sayer): { value: string; label: string }[] {
  if (shape.kind === 'yes-no')
    return [
      { value: 'yes', label: text.yes },
      { value: 'no', label: text.no },
    ]
  return shape.kind === 'choice'
    ? shape.values.map((value) => ({ value: String(value), label: own.choice(String(value)) ?? String(value) }))
    : []
}

/** Several choices to tick. */
function ChoiceTicks({
  at,
  label,
  error,
  options,
  ticked,
}: {
  at: string
  label: string
  error: string | undefined
  options: readonly { value: string; label: string }[]
  ticked: readonly string[]
}) {
  return (
    <div id={at} tabIndex={-1}>
      <CheckGroup id={`${at}-ticks`} label={label}>
        {options.map((option) => (
          <CheckField
            key={option.value}
            name={at}
            id={`${at}-${option.value}`}
            value={option.value}
            label={option.label}
            defaultChecked={ticked.includes(option.value)}
          />
        ))}
      </CheckGroup>
      {error ? <ErrorLine id={`${at}-error`} text={error} /> : null}
    </div>
  )
}

function hintOf(of: Shape, name: string, { own, text, language }: Sayer): string {
  const hint =
    of.kind === 'number'
      ? text.numbersHint
      : of.kind === 'text'
        ? text.textsHint
        : isNumbers(of)
          ? text.linesHint
          : text.otherHint
  const unit = own.screenUnit(name)
  return paragraph([unit && say(text.unitHint, language, { unit }), hint], language)
}

const longestLine = 60

function rowsFor(typed = ''): number {
  const lines = typed.split('\n').reduce((count, line) => count + Math.max(1, Math.ceil(line.length / longestLine)), 0)
  return Math.min(12, Math.max(3, lines + 1))
}
