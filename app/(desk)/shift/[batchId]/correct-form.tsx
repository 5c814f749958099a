'use client'

import { useState } from 'react'
import { ruleOf } from '@/lib/ui/field-rules'
import { FloorButton } from '@/lib/ui/floor-button'
import { floorControlClass } from '@/lib/ui/floor-control-class'
import { say } from '@/lib/words/say'
import { DraftStatus } from './draft-status'
import type { KeptReading, ReadingPlaceProps } from './reading-types'
import { isAtFault, useReadingDraft } from './use-reading-draft'

type CorrectFormProps = Omit<ReadingPlaceProps, 'kept' | 'needs' | 'mayKeep'> & { reading: KeptReading; onDone(): void }

/** By which what is typed of a correction is kept in this browser. */
export function nameOfCorrection(readingId: string): string {
  return `correct-${readingId}`
}

/** What a reading should have been, of which piece, and why it was wrong. */
export function CorrectForm({
  reading,
  measure,
  label,
  pieces,
  rules,
  words,
  language,
  onKept,
  onDraft,
  onDone,
  nowByline,
  sayMoment,
}: CorrectFormProps) {
  const [value, setValue] = useState(reading.valueEntered)
  const [unit, setUnit] = useState(reading.unitEntered)
  const [piece, setPiece] = useState(reading.piece)
  const [reason, setReason] = useState('')
  const id = `correct-${reading.id}`
  const { state, send, empty, typed, drop } = useReadingDraft({
    name: nameOfCorrection(reading.id),
    inTheBook: [reading.id],
    make: (typed) => ({
      id: typed.id,
      supersedesId: reading.id,
      piece: typed.piece === undefined ? null : Number(typed.piece),
      repeat: reading.repeat,
      value: (typed.value ?? '').trim(),
      unit: typed.unit ?? '',
      reason: (typed.reason ?? '').trim().normalize('NFC'),
      confirmed: typed.confirmed === 'yes' || undefined,
    }),
    onKept(entry, sent) {
      onKept(
        {
          ...reading,
          id: entry.id,
          piece: entry.piece ?? null,
          valueEntered: entry.value,
          unitEntered: entry.unit,
          byline: nowByline(reason.trim()),
          supersedesId: reading.id,
          outside: sent.outOfRange ? { least: measure.least, most: measure.most } : null,
          mayCorrect: true,
        },
        sent.needs,
      )
      onDone()
    },
    onBack(typed) {
      setValue(typed.value ?? '')
      setUnit(typed.unit ?? reading.unitEntered)
      setReason(typed.reason ?? '')
      if (typed.piece !== undefined) setPiece(Number(typed.piece))
      onDraft(reading.id, true)
    },
  })
  const now = { value, unit, reason, ...(piece !== null && { piece: String(piece) }) }
  const isFixed = state.step === 'sending' || state.step === 'unsent'
  const correct = (confirmed?: true) => {
    if (state.step === 'sending' || state.step === 'aside') return
    if (value.trim() === '' && state.step !== 'unsent') {
      empty()
      document.getElementById(id)?.focus()
      return
    }
    void send({ ...now, ...(confirmed && { confirmed: 'yes' }) })
  }
  const change = (next: Partial<Record<'value' | 'unit' | 'piece' | 'reason', string>>) => {
    const all = { ...now, ...next }
    setValue(all.value)
    setUnit(all.unit)
    setReason(all.reason)
    if (all.piece !== undefined) setPiece(Number(all.piece))
    typed(all)
    onDraft(reading.id, true)
  }
  const leave = () => {
    drop()
    onDone()
  }

  return (
    <form
      noValidate
      className="my-2 border-l-4 border-ink py-2 pl-4"
      onSubmit={(event) => {
        event.preventDefault()
        correct()
      }}
    >
      <p className="font-semibold">
        {say(words.correctTitle, language, { value: `${reading.valueEntered}\u00a0${reading.unitEntered}` })}
      </p>
      <div className="mt-2 grid gap-3">
        <div className="flex gap-2">
          <input
            id={id}
            value={value}
            onChange={(event) => change({ value: event.target.value })}
            readOnly={isFixed}
            inputMode="decimal"
            autoComplete="off"
            maxLength={ruleOf(rules.correct, 'value')?.mostLength}
            aria-label={words.value}
            aria-invalid={isAtFault(state) ? true : undefined}
            aria-describedby={`${id}-status`}
            className={floorControlClass('number')}
          />
          <select
            value={unit}
            onChange={(event) => change({ unit: event.target.value })}
            disabled={isFixed}
            aria-label={say(words.unit, language, { measure: measure.name, place: label })}
            className={floorControlClass('unit')}
          >
            {[...new Set([reading.unitEntered, ...measure.units])].map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </div>
        {reading.piece === null ? null : (
          <label className="flex items-center gap-3">
            {words.correctPiece}
            <select
              value={String(piece)}
              onChange={(event) => change({ piece: event.target.value })}
              disabled={isFixed}
              className={floorControlClass('unit')}
            >
              {Array.from({ length: Math.max(pieces, reading.piece) }, (_, i) => (
                <option key={i}>{i + 1}</option>
              ))}
            </select>
          </label>
        )}
        <label className="block font-semibold">
          {words.correctReason}
          <input
            value={reason}
            onChange={(event) => change({ reason: event.target.value })}
            readOnly={isFixed}
            autoComplete="off"
            maxLength={ruleOf(rules.correct, 'reason')?.mostLength}
            className={`mt-1 block font-normal ${floorControlClass('line')}`}
          />
        </label>
        <div className="flex flex-wrap gap-3">
          <FloorButton tone="plain" disabled={state.step === 'sending' || state.step === 'aside'}>
            {state.step === 'unsent' ? words.sendAgain : words.correct}
          </FloorButton>
          {isFixed ? null : (
            <FloorButton tone="plain" onPress={leave}>
              {words.cancel}
            </FloorButton>
          )}
        </div>
      </div>
      <DraftStatus
        id={id}
        state={state}
        measure={measure}
        words={words}
        language={language}
        value={`${value.trim()}\u00a0${unit}`}
        sayMoment={sayMoment}
        onConfirm={() => correct(true)}
      />
    </form>
  )
}
