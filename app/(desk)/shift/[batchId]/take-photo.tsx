'use client'

import { useId, useRef, useState, type SubmitEvent } from 'react'
import { lookAgain } from '@/app/(desk)/look-again'
import { photoKinds } from '@/lib/kitchen/photos/photo-limits.input'
import { ErrorLine } from '@/lib/ui/error-line'
import { FieldFrame } from '@/lib/ui/field-frame'
import { FloorButton } from '@/lib/ui/floor-button'
import { floorControlClass } from '@/lib/ui/floor-control-class'
import { Notice } from '@/lib/ui/notice'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { sendChosenPhoto, type Chosen } from './send-chosen-photo'

type TakePhotoProps = {
  batchId: string
  pieces: number
  words: Words['photos'] & Pick<Words['desk'], 'done'>
  language: Language
}

type State =
  | { step: 'choosing' | 'kept' }
  | { step: 'sending'; done: number; count: number }
  | { step: 'failed'; words: string }

/** Chooses a photo and sends it in pieces. What was chosen stays until the book has it; kept again, it goes on from where it was. */
export function TakePhoto({ batchId, pieces, words: text, language }: TakePhotoProps) {
  const [state, setState] = useState<State>({ step: 'choosing' })
  const chosen = useRef<Chosen | null>(null)
  const input = useRef<HTMLInputElement>(null)
  const id = useId()
  const send = async (event: SubmitEvent<HTMLFormElement>) => {
    event.preventDefault()
    const form = event.currentTarget
    const file = input.current?.files?.[0]
    if (!file) {
      setState({ step: 'failed', words: text.nothing })
      return
    }
    const piece = Number(new FormData(form).get('piece')) || null
    if (chosen.current?.file !== file || chosen.current.piece !== piece) chosen.current = { file, piece, made: null }
    setState({ step: 'sending', done: 0, count: 1 })
    const sent = await sendChosenPhoto(batchId, chosen.current, (done, count) =>
      setState({ step: 'sending', done, count }),
    )
    if (sent.outcome !== 'kept') {
      setState({ step: 'failed', words: sent.words ?? text.notAnswered })
      return
    }
    chosen.current = null
    form.reset()
    setState({ step: 'kept' })
    await lookAgain()
  }
  const isSending = state.step === 'sending'
  return (
    <form onSubmit={(event) => void send(event)} className="grid gap-4">
      <p className="max-w-measure">{text.caution}</p>
      <FieldFrame id={`${id}-photo`} label={text.file} hint={text.fileHint}>
        <input
          ref={input}
          id={`${id}-photo`}
          name="photo"
          type="file"
          accept={photoKinds}
          disabled={isSending}
          aria-describedby={`${id}-photo-hint`}
          onChange={() => setState({ step: 'choosing' })}
          className={`block ${floorControlClass('line')}`}
        />
      </FieldFrame>
      <FieldFrame id={`${id}-piece`} label={text.shows}>
        <select id={`${id}-piece`} name="piece" disabled={isSending} className={floorControlClass('line')}>
          <option value="">{text.whole}</option>
          {Array.from({ length: pieces }, (_, at) => at + 1).map((number) => (
            <option key={number} value={number}>
              {say(text.piece, language, { number })}
            </option>
          ))}
        </select>
      </FieldFrame>
      <div>
        <FloorButton tone="plain" disabled={isSending}>
          {text.keep}
        </FloorButton>
      </div>
      <div aria-live="polite">
        {state.step === 'sending' ? (
          <p>{say(text.sending, language, { done: Math.min(state.done + 1, state.count), count: state.count })}</p>
        ) : null}
        {state.step === 'failed' ? <ErrorLine id={`${id}-fault`} text={state.words} /> : null}
        {state.step === 'kept' ? (
          <Notice tone="ok" word={text.done}>
            {text.kept}
          </Notice>
        ) : null}
      </div>
    </form>
  )
}
