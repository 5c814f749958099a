'use client'

import { use } from 'react'
import { ActionFormContext } from '@/lib/ui/action-form-context'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { FloorField } from '@/lib/ui/floor-field'
import { FloorSelect } from '@/lib/ui/floor-select'
import { sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { BatchShown } from './batch-view'

type Lots = NonNullable<BatchShown['weighed']>[number]['lots']

type LotFieldsProps = {
  /** Which line of the form. */
  at: number
  /** What the line is called. */
  line: string
  lots: Lots
  /** For what the scale showed; without one the lot gave all of it. */
  unit?: string
  text: Words['shift']['weighed']
  language: Language
}

/** From which lot a line was taken, and behind a tap from which other one, with what each gave. Nobody has to say it. */
export function LotFields({ at, line, lots, unit, text, language }: LotFieldsProps) {
  const { typed } = use(ActionFormContext)
  if (lots.length === 0) return null
  const chosen = (which: number, label: string) => (
    <FloorSelect
      name={`lines.${at}.lots.${which}.lotId`}
      label={label}
      emptyLabel={text.lotUnsaid}
      options={lots.map(({ id, code, isPast, isToConfirm }) => ({
        value: id,
        label: isToConfirm
          ? sayName(text.lotToConfirm, language, { code })
          : isPast
            ? sayName(text.lotPast, language, { code })
            : code,
      }))}
    />
  )
  const mass = (which: number, label: string) => (
    <FloorField name={`lines.${at}.lots.${which}.mass`} type="mass" label={label} />
  )
  const first = chosen(0, sayName(text.lot, language, { line }))
  if (unit === undefined || lots.length === 1) return first
  // What was typed within is never hidden behind an answer, and neither is what was wrong with it.
  const isTyped = ['0.mass', '1.lotId', '1.mass'].some((name) => typed?.[`lines.${at}.lots.${name}`])
  return (
    <>
      {first}
      <FloorDisclosure open={isTyped} title={sayName(text.twoLots, language, { line })}>
        <p className="mb-3 max-w-measure">{text.twoLotsNote}</p>
        <div className="grid gap-4">
          {mass(0, sayName(text.lotMass, language, { line, unit }))}
          {chosen(1, sayName(text.otherLot, language, { line }))}
          {mass(1, sayName(text.otherLotMass, language, { line, unit }))}
        </div>
      </FloorDisclosure>
    </>
  )
}
