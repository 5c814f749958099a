import { createElement } from 'react'
import { describe, expect, it } from 'vitest'
import { CheckField } from '@/lib/ui/check-field'
import { Field } from '@/lib/ui/field'
import { RadioGroupField } from '@/lib/ui/radio-group-field'
import { SelectField } from '@/lib/ui/select-field'
import { TextAreaField } from '@/lib/ui/text-area-field'
import { elementsOf } from './elements-of'

/* Source: WAI-ARIA 1.2, aria-describedby and aria-invalid; WCAG 2.2, 1.3.1, 3.3.1 and 3.3.2. */
const told = { name: 'dose', label: 'Dose', hint: 'customary 0.2 to 1', error: 'Too much.' }
const options = [
  { value: 'gain', label: 'Gain' },
  { value: 'same', label: 'Same as' },
]
const controls = ['input', 'select', 'textarea']

describe.each([
  ['Field', createElement(Field, { ...told, type: 'number', unit: '%' })],
  ['TextAreaField', createElement(TextAreaField, told)],
  ['SelectField', createElement(SelectField, { ...told, options })],
  ['CheckField', createElement(CheckField, told)],
  ['RadioGroupField', createElement(RadioGroupField, { ...told, options })],
])('%s with a fault', (_, element) => {
  const elements = elementsOf(element)
  const ids = elements.map(({ props }) => props.id)

  it('marks its control as invalid, a group of choices as a whole', () => {
    const group = elements.find(({ props }) => props.role === 'radiogroup')
    const control = elements.find(({ tag }) => controls.includes(tag))
    expect((group ?? control)?.props['aria-invalid']).toBe(true)
  })

  it('is described by its fault and its hint, and by nothing that is not there', () => {
    const named = elements.flatMap(({ props }) =>
      typeof props['aria-describedby'] === 'string' ? props['aria-describedby'].split(' ') : [],
    )
    expect(named).toEqual(expect.arrayContaining(['dose-error', 'dose-hint']))
    expect(ids).toEqual(expect.arrayContaining(named))
  })

  it('has one control with the id that a summary links to, and a label for it', () => {
    expect(elements.filter(({ tag, props }) => controls.includes(tag) && props.id === 'dose')).toHaveLength(1)
    expect(elements.some(({ tag, props }) => tag === 'label' && props.htmlFor === 'dose')).toBe(true)
  })
})

it('a field without hint, fault and unit is described by nothing and not called invalid', () => {
  const elements = elementsOf(createElement(Field, { name: 'title', type: 'text', label: 'Question' }))
  const input = elements.find(({ tag }) => tag === 'input')
  expect(input?.props['aria-describedby']).toBeUndefined()
  expect(input?.props['aria-invalid']).toBeUndefined()
})

it('a number is typed as text with a number keypad, so that a comma survives', () => {
  const input = elementsOf(createElement(Field, { name: 'dose', type: 'number', label: 'Dose' })).find(
    ({ tag }) => tag === 'input',
  )
  expect(input?.props).toMatchObject({ type: 'text', inputMode: 'decimal' })
})
