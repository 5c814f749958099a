import { useState } from 'react'
import { say } from '../../words/say'
import { stationCauses as words } from '../../words/en/station-causes'
import { station } from '../../words/en/station'
import { causeDraft, keepCause } from '../keep/keep-cause'
import type { KeptBy } from '../keep/keep-entry'
import { forget, goOn, type Kept } from '../keep/tablet'
import { sendOutbox } from '../talk/send-outbox'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'

const longest = 300

/** What went wrong with a dough: the common things at a tap, and room for another. */
export function CauseScreen({ of, by }: { of: Kept['wrong']; by: KeptBy }) {
  const { text, type } = useDraft(causeDraft(by.personId, of.batchId))
  const [error, setError] = useState<string | null>(null)
  const keep = async (what: string) => {
    try {
      await keepCause({ of, what, by })
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await goOn('wrong', of, null)
  }
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.title, 'en', { code: of.code })}</h1>
        <Tap look="quiet" onTap={() => void forget('wrong')}>
          {words.back}
        </Tap>
      </div>
      <p>{words.note}</p>
      <p role="alert" className="fault">
        {error}
      </p>
      <ul className="rows">
        {Object.values(words.what).map((each) => (
          <li key={each}>
            <Tap look="row" onTap={() => void keep(each)}>
              <b>{each}</b>
            </Tap>
          </li>
        ))}
      </ul>
      <label>
        {words.other}
        <input
          className="line"
          value={text ?? ''}
          maxLength={longest}
          autoComplete="off"
          onChange={({ target }) => type(target.value)}
        />
      </label>
      <Tap look="plain" disabled={(text ?? '').trim() === ''} onTap={() => void keep(text ?? '')}>
        {words.keep}
      </Tap>
    </div>
  )
}
