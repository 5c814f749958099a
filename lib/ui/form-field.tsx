'use client'

import { use } from 'react'
import type { FieldFigure } from '../words/format/figure-in-field'
import { plainNumber } from '../words/format/plain-number'
import { say } from '../words/say'
import { useFormField } from './action-form-context'
import { DraftOwnerContext } from './draft-owner'
import { Field, type FieldProps } from './field'
import type { FieldRule } from './field-rules'
import { useChangedHint } from './use-changed-hint'

export type FormFieldProps = FieldProps & {
  /** Says the bounds behind the label, in the units of the figure where it is typed in others than are kept. */
  range?: true | FieldFigure
}

/** A `Field` that shows what was typed and what was wrong with it, and asks what the command asks, from the form around it. */
export function FormField({ range, ...props }: FormFieldProps) {
  const { id, typed, error, rule } = useFormField(props.name, props.label)
  const hint = useChangedHint(props.name, props.hint, props.defaultValue)
  const bounds = useBounds(range, rule)
  return (
    <Field
      {...props}
      label={bounds === null ? props.label : `${props.label} (${bounds})`}
      required={props.required ?? rule?.isRequired}
      maxLength={props.maxLength ?? rule?.mostLength}
      id={id}
      hint={hint}
      defaultValue={typed ?? props.defaultValue}
      error={error}
    />
  )
}

/** The bounds of a number in words: '1 to 100', 'up to 50,000', '0 to under 50'. */
function useBounds(range: true | FieldFigure | undefined, rule: FieldRule | undefined): string | null {
  const owner = use(DraftOwnerContext)
  if (range === undefined || owner === null || rule?.least === undefined || rule.most === undefined) return null
  const { words, language, locale } = owner
  // A bound in ounces or Fahrenheit may have no short number: rounded into what is allowed.
  const written = (bound: number, round: (value: number) => number) =>
    plainNumber(range === true ? bound : round(range.inUnit(bound)), { locale, significant: 9 })
  const most = written(rule.most, Math.floor)
  if (rule.isAboveLeast && rule.least === 0) return say(words.upTo, language, { most })
  return say(rule.isBelowMost ? words.toUnder : words.between, language, {
    least: written(rule.least, Math.ceil),
    most,
  })
}
