import { say } from '../../words/say'
import { stationNotes as words } from '../../words/en/station-notes'
import type { Floor } from '../keep/facts'
import { remember } from '../keep/tablet'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'

type HandOverProps = { notes: Floor['notes'] | undefined; locale: string; timeZone: string }

/** What the shift before left for this one, and the way to leave something for the next. */
export function HandOver({ notes = [], ...clock }: HandOverProps) {
  return (
    <>
      {notes.length > 0 && (
        <section>
          <h2>{words.left}</h2>
          <ul className="rows">
            {notes.map(({ id, text, who, at, code }) => (
              <li key={id} className="lying">
                <p className="said">{text}</p>
                <p>
                  {code === null
                    ? say(words.by, 'en', { who, at: shownTime(at, clock) })
                    : say(words.byOfDough, 'en', { who, at: shownTime(at, clock), code })}
                </p>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Tap look="plain" onTap={() => void remember('noting', { batchId: null, code: null })}>
        {words.write}
      </Tap>
    </>
  )
}
