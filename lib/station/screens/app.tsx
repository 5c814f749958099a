import { useState } from 'react'
import { station as words } from '../../words/en/station'
import { readTablet } from '../keep/read-tablet'
import { clockAheadMs } from '../outbox/clock-ahead'
import { countOfDough } from '../outbox/count-of-dough'
import { placesWithEntries } from '../outbox/stand-of-place'
import { calledLooks, runningTimers, stepsOfDough, whereaboutsOf } from '../outbox/steps-of-dough'
import { Open } from '../ui/use-go-on'
import { useLive } from '../ui/use-live'
import { CauseScreen } from './cause'
import { Checks } from './checks'
import { CleanDown } from './clean-down'
import { CorrectionScreen } from './correction'
import { CountScreen } from './count'
import { DoughScreen } from './dough'
import { DoughList } from './dough-list'
import { Enrol } from './enrol'
import { FixStep } from './fix-step'
import { HandScanner } from './hand-scanner'
import { Idle } from './idle'
import { ExchangeScreen } from './exchange'
import { NoteScreen } from './note'
import { OutboxList } from './outbox-list'
import { OutScreen } from './out-dough'
import { PhotoScreen } from './photo'
import { PieceScreen } from './piece'
import { ReadingScreen } from './reading'
import { ScanScreen } from './scan'
import { StepScreen } from './step'
import { Strip } from './strip'
import { Timers } from './timers'
import { WeighOut } from './weigh-out'
import { Who } from './who'
import { Withdrawn } from './withdrawn'

/** The whole of a tablet: one thing at a time, under a strip that always says where everything stands. */
export function App() {
  const { value: now, failed } = useLive(readTablet)
  const [isListOpen, setListOpen] = useState(false)
  const [isEnrolling, setEnrolling] = useState(false)
  // Of whom and over which screen the camera is open: it never opens by itself for somebody else, or after a reload.
  const [scanning, setScanning] = useState<{ over: string; measureId: string | null } | null>(null)

  if (failed) return <p className="lone">{words.notKeeping}</p>
  if (!now) return <p className="lone">{words.starting}</p>
  if (!now.station || isEnrolling)
    return (
      <Enrol
        scanned={now.station ? null : (now.at?.batchId ?? null)}
        onDone={() => setEnrolling(false)}
        onBegin={() => setEnrolling(true)}
      />
    )

  const { station, on, at, noting, wrong, checking, emptyGauge, entries, holders, lists, begun, photos } = now
  const floor = now.floor && {
    ...now.floor,
    value: { ...now.floor.value, doughs: now.floor.value.doughs.map((dough) => whereaboutsOf(dough, entries)) },
  }
  const person = on && holders.find(({ personId }) => personId === on.personId)
  const hasOpened = (of: string) =>
    lists.some(({ batchId, openedBy }) => batchId === of && openedBy.includes(person?.personId ?? ''))
  // Of which lot a label is tells what goes into a dough: somebody else goes on without it.
  const photographing =
    now.photographing && (!now.photographing.label || hasOpened(now.photographing.batchId)) ? now.photographing : null
  const dough = at && (floor?.value.doughs.find(({ id }) => id === at.batchId) ?? null)
  const measure = dough?.measures.find(({ id }) => id === at?.measureId)
  const place =
    dough &&
    measure &&
    placesWithEntries(dough.id, measure, entries).find(
      ({ piece, repeat }) => piece === at?.piece && repeat === at.repeat,
    )
  const { locale, timeZone } = station.bakery
  const shared = { locale, timeZone, entries, photos }
  const aheadMs = floor ? clockAheadMs(floor) : 0

  const over = JSON.stringify([person?.personId, at])
  if (scanning && scanning.over !== over) setScanning(null)

  // Elsewhere something else is half done.
  const isInside = Boolean(isListOpen || now.withdrawn || noting || photographing || wrong || checking)
  const isAtSlips = !isInside && !at?.step && !at?.count && !at?.exchange && !at?.isFix && at?.weigh === undefined

  const screen = () => {
    if (isListOpen)
      return (
        <OutboxList {...shared} lists={lists} personId={person?.personId ?? null} onBack={() => setListOpen(false)} />
      )
    if (now.withdrawn) return <Withdrawn kept={[...entries, ...photos]} onAgain={() => setEnrolling(true)} />
    if (!person) return <Who people={station.people} holders={holders} />
    const by = {
      stationId: station.station.id,
      personId: person.personId,
      personName: person.name,
      shiftToken: person.token ?? '',
    }
    const scan = (measureId: string | null) => setScanning({ over, measureId })
    if (floor && scanning?.over === over)
      return (
        <ScanScreen
          floor={floor.value}
          entries={entries}
          measureId={scanning.measureId}
          onDone={() => setScanning(null)}
        />
      )
    if (noting) return <NoteScreen key={`${noting.batchId} ${by.personId}`} of={noting} by={by} />
    if (photographing) return <PhotoScreen key={`${photographing.batchId} ${by.personId}`} of={photographing} by={by} />
    if (wrong) return <CauseScreen key={`${wrong.batchId} ${by.personId}`} of={wrong} by={by} />
    if (checking && floor)
      return <Checks key={`${checking.instrumentId} ${by.personId}`} {...shared} {...{ floor, by }} of={checking} />
    const next = floor?.value.next.find(({ id }) => id === at?.batchId)
    if (next && at?.exchange)
      return <ExchangeScreen key={`${next.id} ${by.personId}`} next={next} personId={person.personId} />
    if (next) return <CleanDown dough={next} person={{ id: person.personId, name: person.name }} />
    const out = floor?.value.out.find(({ id }) => id === at?.batchId)
    if (out)
      return <OutScreen key={`${out.id} ${by.personId}`} dough={out} moved={now.out} personId={person.personId} />
    if (!at) return <DoughList {...shared} floor={floor} personId={person.personId} onScan={() => scan(null)} />
    const pinAt = person.pinAt ?? 0
    const correctsAny = station.people.find(({ id }) => id === person.personId)?.correctsAny ?? false
    // The weights are for whoever opened them, also without a network.
    const kept =
      lists.find(({ batchId, openedBy }) => batchId === dough?.id && openedBy.includes(person.personId)) ?? null
    if (kept && at.weigh !== undefined)
      return <WeighOut {...shared} kept={kept} lists={lists} at={at} by={by} pinAt={pinAt} correctsAny={correctsAny} />
    const temperatureUnit = floor?.value.temperatureUnit ?? '°C'
    const { step } = at
    if (dough && step) {
      const wrong = stepsOfDough(dough, entries, aheadMs).find(({ id }) => id === step.wrongId)
      if (wrong) return <FixStep key={wrong.id} {...shared} {...{ dough, wrong, by, pinAt, correctsAny }} />
      if (step.wrongId === null)
        return (
          <StepScreen
            key={`${dough.id} ${step.kind} ${by.personId}`}
            {...{ dough, by, temperatureUnit, locale }}
            step={step.kind}
          />
        )
    }
    if (dough && at.count)
      return (
        <CountScreen
          key={`${dough.id} count ${by.personId}`}
          {...{ dough, by, locale }}
          stands={countOfDough(dough, entries, aheadMs)}
        />
      )
    const { piece } = at
    if (piece !== null && !measure && dough?.measures.some(({ places }) => places.some((each) => each.piece === piece)))
      return <PieceScreen {...shared} dough={dough} piece={piece} onScan={() => scan(null)} />
    if (!floor || !dough || !measure || !place)
      return <DoughScreen {...shared} {...{ dough, floor, kept, begun, by, aheadMs, temperatureUnit }} />
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
        pinAt={pinAt}
        correctsAny={correctsAny}
      />
    ) : (
      <ReadingScreen
        {...shared}
        {...opened}
        {...{ floor, emptyGauge }}
        key={opened.key}
        place={place}
        displace={at.displace ?? null}
        onScan={() => scan(measure.id)}
      />
    )
  }
  return (
    <>
      <Strip now={now} personName={person?.name ?? null} onList={() => setListOpen(true)} />
      {floor && (
        <Timers
          timers={runningTimers(floor.value.doughs, entries, aheadMs)}
          looks={calledLooks(floor.value.doughs, floor.value.looks, entries, aheadMs)}
          silenced={now.silenced}
          isBoard={!isListOpen && !(person && (scanning || noting || photographing || checking || at))}
          opens={Boolean(person)}
          locale={locale}
          timeZone={timeZone}
        />
      )}
      <main>
        {floor && person && isAtSlips && (
          <HandScanner floor={floor.value} entries={entries} measureId={measure?.id ?? null} />
        )}
        <Open value={at}>{screen()}</Open>
      </main>
      {on && <Idle on={on} idleMs={station.bakery.stationIdleMin * 60_000} />}
    </>
  )
}
