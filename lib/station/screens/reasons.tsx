import { useEffect, useId, useState } from 'react'
import { station as words } from '../../words/en/station'
import { tablet } from '../keep/tablet'
import { Tap } from '../ui/tap'

const longestReason = 300

type ReasonsProps = {
  /** The common ones. */
  reasons: readonly string[]
  /** Under what a half-typed one is kept. */
  draft: string
  onChoose(reason: string): void
}

/** The common reasons of a correction as taps, and room for another. */
export function Reasons({ reasons, draft, onChoose }: ReasonsProps) {
  const [text, setText] = useState('')
  const id = useId()
  useEffect(() => {
    void tablet.drafts.get(draft).then((kept) => setText((typed) => typed || (kept?.text ?? '')))
  }, [draft])
  return (
    <>
      <h2>{words.fix.why}</h2>
      <ul className="rows">
        {reasons.map((each) => (
          <li key={each}>
            <Tap look="row" onTap={() => onChoose(each)}>
              {each}
            </Tap>
          </li>
        ))}
      </ul>
      <label htmlFor={id}>{words.fix.other}</label>
      <input
        id={id}
        className="line"
        value={text}
        maxLength={longestReason}
        autoComplete="off"
        onChange={({ target }) => {
          setText(target.value)
          void tablet.drafts.put({ place: draft, text: target.value })
        }}
      />
      <Tap look="plain" disabled={text.trim() === ''} onTap={() => onChoose(text.trim())}>
        {words.fix.goOn}
      </Tap>
    </>
  )
}
