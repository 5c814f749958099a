'use client'

import { useEffect, useRef, type KeyboardEvent, type ReactNode } from 'react'
import { say } from '../words/say'
import type { Words } from '../words/words'
import { controlClass, type ControlWidth } from './control-class'
import { describedBy } from './described-by'
import { ErrorLine } from './error-line'
import { FieldFrame } from './field-frame'
import { textName, type Choice, type Find, type SearchValue } from './search'
import { SearchList } from './search-list'
import { useSearch } from './use-search'

export type SearchFieldProps<Option extends Choice> = {
  /** Name in the form, under which the id is sent. */
  name: string
  id?: string
  label: string
  /** In a table whose column says what it is, the label is only read out. */
  inTable?: boolean
  value: SearchValue
  /** Told of what is typed, with no id, and of what is chosen. */
  onChange: (value: SearchValue, chosen: Option | null) => void
  find: Find<Option>
  /** What stands below a name in the list. */
  detailOf?: (option: Option) => string | null
  required?: boolean
  width?: ControlWidth
  maxLength?: number
  hint?: ReactNode
  error?: string
  /** Told of keys first; one that it prevents is not the field's. */
  onKeyDown?: (event: KeyboardEvent<HTMLInputElement>) => void
  words: Words['desk']['drafts']['search']
  language: string
}

/**
 * One of many, found by part of its name: a combobox with a listbox after the WAI-ARIA Authoring Practices. Arrows go
 * through the list, Enter or Tab takes the one they are on, Escape closes it, and the next Escape empties what was not
 * chosen. A whole name that is typed is chosen; anything else is said at the field.
 */
export function SearchField<Option extends Choice>(props: SearchFieldProps<Option>) {
  const { name, id = name, label, inTable = false, value, required = false, hint, words, language } = props
  const { find, onChange } = props
  const search = useSearch({ value, find, onChange })
  const control = useRef<HTMLInputElement>(null)
  const option = search.isOpen ? search.found?.options[search.active] : undefined
  const isListed = search.isOpen && (search.found?.options.length ?? 0) > 0
  const fault =
    search.fault === 'nobody' && !search.isOpen
      ? say(words.nobody, language, { typed: value.text.trim() })
      : search.fault === 'failed'
        ? words.failed
        : undefined
  const error = fault ?? props.error

  // A choice by key is no event of the form's own, and what keeps drafts listens to those.
  const chosenId = useRef(value.id)
  useEffect(() => {
    if (chosenId.current === value.id) return
    chosenId.current = value.id
    control.current?.dispatchEvent(new Event('change', { bubbles: true }))
  }, [value.id])

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    // A letter that is still being put together is not over with Enter.
    if (event.nativeEvent.isComposing) return
    if (option && (event.key === 'Enter' || event.key === 'Tab')) {
      if (event.key === 'Enter') event.preventDefault()
      search.choose(option)
      return
    }
    props.onKeyDown?.(event)
    if (event.defaultPrevented) return
    switch (event.key) {
      case 'ArrowDown':
      case 'ArrowUp':
        event.preventDefault()
        if (search.isOpen) search.move(event.key === 'ArrowDown' ? 1 : -1)
        else search.open('arrow')
        return
      case 'Enter':
        if (!search.isOpen && value.id !== '') return
        // A form half chosen is not sent.
        event.preventDefault()
        search.close()
        search.settle()
        return
      case 'Escape':
        if (search.isOpen) {
          event.preventDefault()
          search.close()
        } else if (value.id === '' && value.text !== '') search.clear()
        return
      default:
    }
  }

  const field = (
    <>
      <input type="hidden" name={name} value={value.id} />
      <input
        ref={control}
        id={id}
        name={textName(name)}
        type="text"
        role="combobox"
        aria-autocomplete="list"
        aria-expanded={isListed}
        aria-controls={isListed ? `${id}-list` : undefined}
        aria-activedescendant={option ? `${id}-list-${search.active}` : undefined}
        aria-label={inTable ? label : undefined}
        aria-invalid={error ? true : undefined}
        aria-describedby={describedBy(id, hint, error)}
        required={required}
        maxLength={props.maxLength}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        value={value.text}
        onChange={({ target }) => {
          if (target.value !== value.text) search.type(target.value)
        }}
        onClick={() => search.open('field')}
        onFocus={({ currentTarget }) => {
          // The next letter takes the place of what was chosen.
          if (value.id !== '') currentTarget.select()
        }}
        onBlur={() => {
          search.close()
          search.settle()
        }}
        onKeyDown={onKeyDown}
        className={controlClass(props.width ?? 'medium')}
      />
      <SearchList
        id={`${id}-list`}
        label={label}
        anchor={control}
        search={search}
        chosenId={value.id}
        detailOf={props.detailOf}
        words={words}
        language={language}
      />
    </>
  )
  if (!inTable)
    return (
      <FieldFrame id={id} label={label} hint={hint} error={error}>
        {field}
      </FieldFrame>
    )
  return (
    <>
      {field}
      {hint ? (
        <p id={`${id}-hint`} className="mt-1 text-small text-ink-2">
          {hint}
        </p>
      ) : null}
      {error ? <ErrorLine id={`${id}-error`} text={error} /> : null}
    </>
  )
}
