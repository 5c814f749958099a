import { useState } from 'react'
import { station as words } from '../../words/en/station'
import { readTablet } from '../keep/read-tablet'
import { placesWithEntries } from '../outbox/stand-of-place'
import { useLive } from '../ui/use-live'
import { CorrectionScreen } from './correction'
import { DoughScreen } from './dough'
import { DoughList } from './dough-list'
import { Enrol } from './enrol'
import { Idle } from './idle'
import { NoteScreen } from './note'
import { OutboxList } from './outbox-list'
import { ReadingScreen } from './reading'
import { Strip } from './strip'
import { Who } from './who'
import { Withdrawn } from './withdrawn'

/** The whole of a tablet: one thing at a time, under a strip that always says where everything stands. */
export function App() {
  const { value: now, failed } = useLive(readTablet)
  const [isListOpen, setListOpen] = useState(false)
  const [isEnrolling, setEnrolling] = useState(false)

  if (failed) return <p className="lone">{words.notKeeping}</p>
  if (!now) return <p className="lone">{words.starting}</p>
  if (!now.station || isEnrolling)
    return <Enrol onDone={() => setEnrolling(false)} onBegin={() => setEnrolling(true)} />

  const { station, on, at, noting, floor, entries, holders } = now
  const person = on && holders.find(({ personId }) => personId === on.personId)
  const dough = at && (floor?.value.doughs.find(({ id }) => id === at.batchId) ?? null)
  const measure = dough?.measures.find(({ id }) => id === at?.measureId)
  const place =
    dough &&
    measure &&
    placesWithEntries(dough.id, measure, entries).find(
      ({ piece, repeat }) => piece === at?.piece && repeat === at.repeat,
    )
  const { locale, timeZone } = station.bakery
  const shared = { locale, timeZone, entries }

  const screen = () => {
    if (isListOpen) return <OutboxList {...shared} onBack={() => setListOpen(false)} />
    if (now.withdrawn) return <Withdrawn entries={entries} onAgain={() => setEnrolling(true)} />
    if (!person) return <Who people={station.people} holders={holders} />
    const by = {
      stationId: station.station.id,
      personId: person.personId,
      personName: person.name,
      shiftToken: person.token ?? '',
    }
    if (noting) return <NoteScreen key={`${noting.batchId} ${by.personId}`} of={noting} by={by} />
    if (!at) return <DoughList {...shared} floor={floor} />
    if (!dough || !measure || !place) return <DoughScreen {...shared} dough={dough} />
    const { stands } = place
    const opened = {
      key: `${dough.id} ${measure.id} ${place.piece} ${place.repeat} ${person.personId}`,
      dough,
      measure,
      by,
    }
    return at.isFix && stands ? (
      <CorrectionScreen
        {...shared}
        {...opened}
        key={opened.key}
        place={{ ...place, stands }}
        pinAt={person.pinAt ?? 0}
        correctsAny={station.people.find(({ id }) => id === person.personId)?.correctsAny ?? false}
      />
    ) : (
      <ReadingScreen {...shared} {...opened} key={opened.key} place={place} />
    )
  }
  return (
    <>
      <Strip now={now} personName={person?.name ?? null} onList={() => setListOpen(true)} />
      <main>{screen()}</main>
      {on && <Idle on={on} />}
    </>
  )
}
