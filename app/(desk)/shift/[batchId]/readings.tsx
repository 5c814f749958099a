'use client'

import { useRouter } from 'next/navigation'
import { Fragment, useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import { levelOfPiece } from '@/lib/kitchen/readings/rules'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { Lines } from '@/lib/ui/lines'
import { formatDateTime, type DateForm } from '@/lib/words/format/date'
import { say, sayName } from '@/lib/words/say'
import { ReadingPlace } from './reading-place'
import {
  asksForAt,
  idOfField,
  keyOfPlace,
  type KeptReading,
  type MeasureToRead,
  type Needs,
  type Place,
  type ReadingRules,
  type ReadingWords,
} from './reading-types'

export type ReadingsProps = {
  batchId: string
  measures: readonly MeasureToRead[]
  /** How many pieces are to be read. */
  pieces: number
  /** Levels of the trial's factor within batches, which the pieces are of in turn; none where it has none. */
  factorLevels: readonly string[]
  /** What is in the book, corrected ones as well. */
  inTheBook: readonly KeptReading[]
  /** What each place still asks for, by `keyOfPlace`. */
  needs: Readonly<Record<string, Needs>>
  isOpen: boolean
  /** False once the batch is lost: what is there may be corrected, and nothing is added. */
  mayKeep: boolean
  /** Comes after the first thing to read: what the batch is made of, while it is weighed out. */
  between?: ReactNode
  rules: ReadingRules
  me: string
  dateForm: DateForm
  words: ReadingWords
  language: string
}

/**
 * Everything that is read on one batch, measure by measure: what is to be read comes first, what is done folds up below.
 * What is kept here is added to what the page brought, and the next open field gets the focus.
 */
export function Readings(props: ReadingsProps) {
  const {
    batchId,
    measures,
    pieces,
    factorLevels,
    inTheBook,
    needs,
    isOpen,
    mayKeep,
    between,
    rules,
    me,
    dateForm,
    words,
    language,
  } = props
  const { refresh } = useRouter()
  const [added, setAdded] = useState<readonly KeptReading[]>([])
  const [needsNow, setNeedsNow] = useState<Readonly<Record<string, Needs>>>({})
  const [unsent, setUnsent] = useState<ReadonlySet<string>>(new Set())

  // Once the page has brought what was kept here, it knows better what a place still asks for.
  const notYetBrought = useMemo(() => {
    const known = new Set(inTheBook.map(({ id }) => id))
    return added.filter(({ id }) => !known.has(id))
  }, [inTheBook, added])
  const needsOf = useCallback(
    (key: string): Needs =>
      (notYetBrought.some((reading) => keyOfPlace(reading) === key) ? needsNow[key] : undefined) ?? needs[key] ?? null,
    [notYetBrought, needsNow, needs],
  )
  const holding = useMemo(() => {
    const all = [...inTheBook, ...notYetBrought]
    const gone = new Set(all.map(({ supersedesId }) => supersedesId))
    return all.filter(({ id }) => !gone.has(id)).sort((a, b) => a.repeat - b.repeat)
  }, [inTheBook, notYetBrought])

  const onKept = useCallback(
    (reading: KeptReading, needs: Needs) => {
      setAdded((before) => [...before, reading])
      setNeedsNow((before) => ({ ...before, [keyOfPlace(reading)]: needs }))
      // What the page says of the batch, such as what is missing, follows; what is typed here stays.
      refresh()
    },
    [refresh],
  )
  const onDraft = useCallback((key: string, isUnsent: boolean) => {
    setUnsent((before) => {
      if (before.has(key) === isUnsent) return before
      const after = new Set(before)
      if (isUnsent) after.add(key)
      else after.delete(key)
      return after
    })
  }, [])
  useLeaveGuard(unsent.size > 0)

  const parts = useMemo(() => {
    const asks = (place: Place, measure: MeasureToRead) => {
      const key = keyOfPlace(place)
      const have = holding.filter((reading) => keyOfPlace(reading) === key).length
      // What somebody types stays where they type it, also where another was faster.
      return unsent.has(key) || asksForAt(have, measure, needsOf(key)) !== null
    }
    const all = measures.map((measure) => {
      const places = measure.level === 'batch' ? [null] : Array.from({ length: pieces }, (_, i) => i + 1)
      const each = places
        .map(
          (piece): Place => ({
            measureId: measure.id,
            piece,
            factorLevel: piece === null ? null : levelOfPiece(piece, factorLevels),
          }),
        )
        .map((place) => ({ place, isAsking: asks(place, measure) }))
      return { measure, places: openFirst(each), isAsking: each.some(({ isAsking }) => isAsking) }
    })
    const wanted = all.filter(({ measure, isAsking }) => isAsking && measure.isWanted)
    return [
      ...wanted,
      ...all.filter(({ measure, isAsking }) => isAsking && !measure.isWanted),
      ...all.filter(({ isAsking }) => !isAsking),
    ]
  }, [measures, pieces, factorLevels, holding, needsOf, unsent])

  const [first] = parts
  const isNext = mayKeep && first?.isAsking === true && first.measure.isWanted
  const nextField = isNext && first.places[0] ? idOfField(first.places[0].place) : null
  const keptCount = useRef(0)
  useEffect(() => {
    if (added.length === keptCount.current) return
    keptCount.current = added.length
    if (nextField) document.getElementById(nextField)?.focus()
  }, [added, nextField])

  const byline = (reason?: string) => {
    const facts = { who: me, at: formatDateTime(new Date(), dateForm) }
    return reason === undefined
      ? say(words.inTheBook, language, facts)
      : say(words.inTheBookCorrected, language, { ...facts, reason })
  }
  const show = (measure: MeasureToRead, place: Place) => {
    const key = keyOfPlace(place)
    const { piece, factorLevel } = place
    return (
      <ReadingPlace
        key={key}
        batchId={batchId}
        place={place}
        measure={measure}
        label={
          piece === null
            ? words.batch
            : factorLevel === null
              ? sayName(words.piece, language, { piece })
              : sayName(words.pieceLevel, language, { piece, level: factorLevel })
        }
        kept={holding.filter((reading) => keyOfPlace(reading) === key)}
        needs={needsOf(key)}
        pieces={pieces}
        isOpen={isOpen}
        mayKeep={mayKeep}
        rules={rules}
        words={words}
        language={language}
        onKept={onKept}
        onRefused={refresh}
        onDraft={onDraft}
        nowByline={byline}
        sayMoment={(at) => formatDateTime(new Date(at), dateForm)}
      />
    )
  }
  return (
    <div className="border-t-2 border-ink">
      {unsent.size > 0 ? (
        <p role="status" className="py-2 font-semibold">
          {say(words.unsent, language, { count: unsent.size })}
        </p>
      ) : null}
      {mayKeep && !isNext ? <p className="py-2 font-semibold">{words.allRead}</p> : null}
      {parts.map(({ measure, places, isAsking }, at) => {
        const of = measure.repeats * places.length
        const have = holding.filter(
          ({ measureId, repeat }) => measureId === measure.id && repeat <= measure.repeats,
        ).length
        return (
          <Fragment key={measure.id}>
            <FloorDisclosure
              title={measure.name}
              note={
                <Lines
                  texts={[
                    say(words.done, language, { have, of }),
                    measure.method,
                    ...(measure.due === null ? [] : [measure.due]),
                  ]}
                />
              }
              open={mayKeep && isAsking}
            >
              <div className={measure.level === 'batch' ? 'max-w-column' : 'grid gap-x-8 mid:grid-cols-2'}>
                {places.map(({ place }) => show(measure, place))}
              </div>
            </FloorDisclosure>
            {at === 0 ? between : null}
          </Fragment>
        )
      })}
    </div>
  )
}

/** Those that ask for something first, each half in its order. */
function openFirst<P extends { isAsking: boolean }>(places: readonly P[]): P[] {
  return [...places.filter(({ isAsking }) => isAsking), ...places.filter(({ isAsking }) => !isAsking)]
}

/** Asks before the page goes while something typed is only on this tablet. */
function useLeaveGuard(isNeeded: boolean): void {
  useEffect(() => {
    if (!isNeeded) return
    const guard = (event: BeforeUnloadEvent) => event.preventDefault()
    window.addEventListener('beforeunload', guard)
    return () => window.removeEventListener('beforeunload', guard)
  }, [isNeeded])
}
