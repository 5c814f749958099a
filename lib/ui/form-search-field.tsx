'use client'

import { use } from 'react'
import { ActionFormContext, useFormField } from './action-form-context'
import { DraftOwnerContext } from './draft-owner'
import type { Choice, SearchValue } from './search'
import { SearchField, type SearchFieldProps } from './search-field'
import { useChangedHint } from './use-changed-hint'

export type FormSearchFieldProps<Option extends Choice> = Omit<
  SearchFieldProps<Option>,
  'words' | 'language' | 'id' | 'error'
> & {
  /** The name that the field had when the form was answered; null where it came after that. Its own unless given. */
  answeredAs?: string | null
  /** What the page gives the field. */
  present?: SearchValue
}

/** A `SearchField` that shows what was wrong with it and what others made of it meanwhile, from the form around it. Nobody searches who is not signed in. */
export function FormSearchField<Option extends Choice>({
  answeredAs,
  present,
  ...props
}: FormSearchFieldProps<Option>) {
  const { id, rule } = useFormField(props.name, props.label)
  const { state } = use(ActionFormContext)
  const owner = use(DraftOwnerContext)
  const answered = answeredAs === undefined ? props.name : answeredAs
  const hint = useChangedHint(answered ?? '', props.hint, present?.id, present?.text)
  if (owner === null) return null
  return (
    <SearchField
      {...props}
      id={id}
      required={props.required ?? rule?.isRequired}
      hint={hint}
      error={answered === null ? undefined : state.problems[answered]}
      words={owner.words.search}
      language={owner.language}
    />
  )
}
