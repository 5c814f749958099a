'use client'

import { useState } from 'react'
import { FloorButton } from '@/lib/ui/floor-button'
import { floorControlClass } from '@/lib/ui/floor-control-class'
import { say } from '@/lib/words/say'
import { DraftStatus } from './draft-status'
import type { KeptReading, ReadingPlaceProps } from './reading-types'
import { isAtFault, useReadingDraft } from './use-reading-draft'

type CorrectFormProps = Omit<ReadingPlaceProps, 'kept' | 'needs' | 'mayKeep'> & { reading: KeptReading; onDone(): void }

/** What a reading should have been, of which piece, and why it was wrong. */
export function CorrectForm({
  reading,
  measure,
  label,
  pieces,
  words,
  language,
  onKept,
  onDraft,
  onDone,
  nowByline,
}: CorrectFormProps) {
  const [value, setValue] = useState(reading.valueEntered)
  const [unit, setUnit] = useState(reading.unitEntered)
  const [piece, setPiece] = useState(reading.piece)
  const [reason, setReason] = useState('')
  const id = `correct-${reading.id}`
  const { state, send, empty, typed } = useReadingDraft((entry, sent) => {
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
  })
  const isFixed = state.step === 'sending' || state.step === 'unsent'
  const correct = (confirmed?: true) => {
    if (state.step === 'sending' || state.step === 'aside') return
    if (value.trim() === '' && state.step !== 'unsent') {
      empty()
      document.getElementById(id)?.focus()
      return
    }
    void send((entryId) => ({
      id: entryId,
      supersedesId: reading.id,
      piece,
      repeat: reading.repeat,
      value: value.trim(),
      unit,
      reason: reason.trim().normalize('NFC'),
      confirmed,
    }))
  }
  const touch = (set: () => void) => {
    set()
    typed()
    onDraft(reading.id, true)
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
            onChange={(event) => touch(() => setValue(event.target.value))}
            readOnly={isFixed}
            inputMode="decimal"
            autoComplete="off"
            maxLength={40}
            aria-label={words.value}
            aria-invalid={isAtFault(state) ? true : undefined}
            aria-describedby={`${id}-status`}
            className={floorControlClass('number')}
          />
          <select
            value={unit}
            onChange={(event) => touch(() => setUnit(event.target.value))}
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
              onChange={(event) => touch(() => setPiece(Number(event.target.value)))}
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
            onChange={(event) => touch(() => setReason(event.target.value))}
            readOnly={isFixed}
            autoComplete="off"
            maxLength={300}
            className={`mt-1 block font-normal ${floorControlClass('line')}`}
          />
        </label>
        <div className="flex flex-wrap gap-3">
          <FloorButton tone="plain" disabled={state.step === 'sending' || state.step === 'aside'}>
            {state.step === 'unsent' ? words.sendAgain : words.correct}
          </FloorButton>
          {isFixed ? null : (
            <FloorButton tone="plain" onPress={onDone}>
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
        onConfirm={() => correct(true)}
      />
    </form>
  )
}
