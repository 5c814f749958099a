'use client'

import { useCallback, useEffect, useMemo, useState } from 'react'
import { levelOfPiece } from '@/lib/kitchen/readings/rules'
import { FloorDisclosure } from '@/lib/ui/floor-disclosure'
import { formatDateTime, type DateForm } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { ReadingPlace } from './reading-place'
import { keyOfPlace, type KeptReading, type MeasureToRead, type Needs, type Place, type ReadingWords } from './reading-types'

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
  me: string
  dateForm: DateForm
  words: ReadingWords
  language: string
}

/** Everything that is read on one batch, measure by measure. What is kept here is added to what the page brought. */
export function Readings(props: ReadingsProps) {
  const { batchId, measures, pieces, factorLevels, inTheBook, isOpen, me, dateForm, words, language } = props
  const [added, setAdded] = useState<readonly KeptReading[]>([])
  const [needsNow, setNeedsNow] = useState<Readonly<Record<string, Needs>>>({})
  const [unsent, setUnsent] = useState<ReadonlySet<string>>(new Set())

  const holding = useMemo(() => {
    const known = new Set(inTheBook.map(({ id }) => id))
    const all = [...inTheBook, ...added.filter(({ id }) => !known.has(id))]
    const gone = new Set(all.map(({ supersedesId }) => supersedesId))
    return all.filter(({ id }) => !gone.has(id)).sort((a, b) => a.repeat - b.repeat)
  }, [inTheBook, added])

  const onKept = useCallback((reading: KeptReading, needs: Needs) => {
    setAdded((before) => [...before, reading])
    setNeedsNow((before) => ({ ...before, [keyOfPlace(reading)]: needs }))
  }, [])
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

  const show = (measure: MeasureToRead, piece: number | null, factorLevel: string | null) => {
    const place: Place = { measureId: measure.id, piece, factorLevel }
    const key = keyOfPlace(place)
    return (
      <ReadingPlace
        key={key}
        batchId={batchId}
        place={place}
        measure={measure}
        label={piece === null ? words.batch : factorLevel === null ? say(words.piece, language, { piece }) : say(words.pieceLevel, language, { piece, level: factorLevel })}
        kept={holding.filter((reading) => keyOfPlace(reading) === key)}
        needs={needsNow[key] ?? props.needs[key] ?? null}
        pieces={pieces}
        isOpen={isOpen}
        words={words}
        language={language}
        onKept={onKept}
        onDraft={onDraft}
        nowByline={() => say(words.by, language, { who: me, at: formatDateTime(new Date(), dateForm) })}
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
      {measures.map((measure) => {
        const of = measure.repeats * (measure.level === 'batch' ? 1 : pieces)
        const have = holding.filter(({ measureId, repeat }) => measureId === measure.id && repeat <= measure.repeats).length
        return (
          <FloorDisclosure key={measure.id} title={measure.name} note={say(words.done, language, { have, of, method: measure.method })} open>
            <div className={measure.level === 'batch' ? 'max-w-column' : 'grid gap-x-8 mid:grid-cols-2'}>
              {measure.level === 'batch'
                ? show(measure, null, null)
                : Array.from({ length: pieces }, (_, i) => show(measure, i + 1, levelOfPiece(i + 1, factorLevels)))}
            </div>
          </FloorDisclosure>
        )
      })}
    </div>
  )
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
