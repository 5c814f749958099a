import { useState } from 'react'
import { say } from '../../words/say'
import { stationCauses as words } from '../../words/en/station-causes'
import { station } from '../../words/en/station'
import { causeDraft, keepCause } from '../keep/keep-cause'
import type { KeptBy } from '../keep/keep-entry'
import { forget, goOn, type Kept } from '../keep/tablet'
import { sendOutbox } from '../talk/send-outbox'
import { Tap } from '../ui/tap'
import { ReadyOrOwn } from './ready-or-own'

/** What went wrong with a dough: the common things at a tap, and room for another. */
export function CauseScreen({ of, by }: { of: Kept['wrong']; by: KeptBy }) {
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
      <ReadyOrOwn
        ready={Object.values(words.what)}
        other={words.other}
        keep={words.keep}
        draft={causeDraft(by.personId, of.batchId)}
        onSay={(what) => void keep(what)}
      />
    </div>
  )
}
