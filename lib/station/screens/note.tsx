import { useEffect, useId, useState } from 'react'
import { say } from '../../words/say'
import { stationNotes as words } from '../../words/en/station-notes'
import { station } from '../../words/en/station'
import type { KeptBy } from '../keep/keep-entry'
import { keepNote, noteDraft } from '../keep/keep-note'
import { forget, goOn, tablet, type Kept } from '../keep/tablet'
import { sendOutbox } from '../talk/send-outbox'
import { Tap } from '../ui/tap'

const longest = 2000

/** What there is to say of a dough or of the shift, in one's own words. What is half typed stays, and is nobody else's. */
export function NoteScreen({ of, by }: { of: Kept['noting']; by: KeptBy }) {
  const [text, setText] = useState('')
  const [isForNext, setForNext] = useState(of.batchId === null)
  const [error, setError] = useState<string | null>(null)
  const id = useId()
  const draft = noteDraft(by.personId, of.batchId)
  useEffect(() => {
    void tablet.drafts.get(draft).then((kept) => setText((typed) => typed || (kept?.text ?? '')))
  }, [draft])
  const keep = async () => {
    try {
      await keepNote({ of, text, forNext: isForNext, by })
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await goOn('noting', of, null)
  }
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{of.code === null ? words.ofShift : say(words.ofDough, 'en', { code: of.code })}</h1>
        <Tap look="quiet" onTap={() => void forget('noting')}>
          {station.list.back}
        </Tap>
      </div>
      <p>{words.everybody}</p>
      <label htmlFor={id}>{words.text}</label>
      <textarea
        id={id}
        className="line lines"
        rows={5}
        value={text}
        maxLength={longest}
        onChange={({ target }) => {
          setText(target.value)
          void tablet.drafts.put({ place: draft, text: target.value })
        }}
      />
      <Tap look="row" onTap={() => setForNext((is) => !is)}>
        <b>{isForNext ? words.forNext : words.notForNext}</b>
        <span>{words.forNextNote}</span>
      </Tap>
      <p role="alert" className="fault">
        {error}
      </p>
      <Tap look="main" disabled={text.trim() === ''} onTap={() => void keep()}>
        {words.keep}
      </Tap>
    </div>
  )
}
