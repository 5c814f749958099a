import { useState } from 'react'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { KeptList } from '../keep/weigh-facts'
import type { OutboxEntry } from '../outbox/entry'
import { pinWanted } from '../outbox/holds'
import { isOdd } from '../outbox/is-odd'
import { knowsOf } from '../outbox/knows-of'
import { momentOfEntry, saidOfEntry } from '../kinds/kinds'
import { sendAgain } from '../keep/send-again'
import { sendPhotoAgain } from '../photo/send-photo-again'
import type { TabletPhoto } from '../photo/tablet-photo'
import { sendOutbox } from '../talk/send-outbox'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'
import { PhotoLine } from './photos'
import { PinPad } from './pin-pad'

type OutboxListProps = {
  entries: readonly OutboxEntry[]
  photos: readonly TabletPhoto[]
  lists: readonly KeptList[]
  /** Who is on the tablet; null for nobody. */
  personId: string | null
  locale: string
  timeZone: string
  onBack(): void
}

/** Everything that lies on the tablet: what needs somebody first, with the book's words, then what waits, then the rest. */
export function OutboxList({ entries, photos, lists, personId, locale, timeZone, onBack }: OutboxListProps) {
  const [asked, setAsked] = useState<OutboxEntry | null>(null)
  const inState = <Kept extends { state: string }>(kept: readonly Kept[], ...states: string[]) =>
    kept.filter(({ state }) => states.includes(state))
  const groups = [
    { title: words.list.attention, rows: inState(entries, 'attention'), pictures: inState(photos, 'attention') },
    { title: words.list.waiting, rows: inState(entries, 'waiting'), pictures: inState(photos, 'waiting') },
    {
      title: words.list.book,
      rows: inState(entries, 'book', 'aside').reverse(),
      pictures: inState(photos, 'book').reverse(),
    },
  ]
  if (asked)
    return (
      <PinPad
        person={{ id: asked.personId, name: asked.personName }}
        why={words.fix.pin}
        onBack={() => setAsked(null)}
        onDone={() => setAsked(null)}
      />
    )
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.list.title}</h1>
        <Tap look="quiet" onTap={onBack}>
          {words.list.back}
        </Tap>
      </div>
      {entries.length + photos.length === 0 && <p>{words.list.none}</p>}
      {groups
        .filter(({ rows, pictures }) => rows.length + pictures.length > 0)
        .map(({ title, rows, pictures }) => (
          <section key={title}>
            <h2>{title}</h2>
            <ul className="rows">
              {rows.map((entry) => (
                <li key={entry.id} className="lying">
                  <p>{saidOfEntry(entry, locale, knowsOf(entry, personId, lists))}</p>
                  <p>
                    <b>{words.states[entry.state]}</b>
                  </p>
                  {entry.words !== null && <p>{entry.words}</p>}
                  {entry.state === 'attention' &&
                    knowsOf(entry, personId, lists) &&
                    entry.faults?.map((fault) => (
                      <p key={fault} className="attention">
                        {fault}
                      </p>
                    ))}
                  <p>
                    {say(words.list.by, 'en', {
                      name: entry.personName,
                      at: shownTime(momentOfEntry(entry), { locale, timeZone }),
                    })}
                  </p>
                  {entry.state === 'attention' && (
                    <Tap
                      look="plain"
                      onTap={() => {
                        if (entry.refusal === pinWanted) setAsked(entry)
                        else void sendAgain(entry).then(sendOutbox)
                      }}
                    >
                      {entry.refusal === pinWanted
                        ? words.list.typePin
                        : isOdd(entry.refusal)
                          ? words.list.confirm
                          : words.list.again}
                    </Tap>
                  )}
                </li>
              ))}
              {pictures.map((photo) => (
                <li key={photo.id} className="lying">
                  <PhotoLine {...{ photo, locale, timeZone }} isTheirs={photo.personId === personId} />
                  {photo.state === 'attention' && (
                    <Tap look="plain" onTap={() => void sendPhotoAgain(photo.id).then(sendOutbox)}>
                      {words.list.again}
                    </Tap>
                  )}
                </li>
              ))}
            </ul>
          </section>
        ))}
      <p className="note">{words.list.bookNote}</p>
    </div>
  )
}
