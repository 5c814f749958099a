import { useState } from 'react'
import { isOwnSlip } from '../../kitchen/conduct/is-own-slip.input'
import { say, sayName } from '../../words/say'
import { station as words } from '../../words/en/station'
import type { FloorDough, FloorMeasure } from '../keep/facts'
import { keepCorrection } from '../keep/keep-correction'
import type { KeptBy } from '../keep/keep-entry'
import { fixKey } from '../keep/place-key'
import { atDough, openDough, tablet } from '../keep/tablet'
import type { Standing, StoodPlace } from '../outbox/stand-of-place'
import { sendOutbox } from '../talk/send-outbox'
import { shownTime, shownValue } from '../ui/figures'
import { placeName } from '../ui/place-name'
import { Tap } from '../ui/tap'
import { useGoOn } from '../ui/use-go-on'
import { NumberScreen } from './number-screen'
import { Reasons } from './reasons'
import { usePinFirst } from './use-pin-first'

type CorrectionProps = {
  dough: FloorDough
  measure: FloorMeasure
  place: StoodPlace & { stands: Standing }
  by: KeptBy
  /** When whoever is on the tablet typed their PIN here, ms, and whether they correct what others read. */
  pinAt: number
  correctsAny: boolean
  locale: string
  timeZone: string
}

/** What stands in a place is put right: a slip of one's own at once, anything else for a reason and under one's PIN. */
export function CorrectionScreen(q: CorrectionProps) {
  const { dough, measure, place: stood, by, pinAt, correctsAny, locale, timeZone } = q
  // What was opened is what is put right, also when somebody else puts it right meanwhile.
  const [wrong] = useState(stood.stands)
  const [isSlip] = useState(() =>
    isOwnSlip(
      { person: { id: wrong.personId }, receivedAt: new Date(wrong.receivedAt) },
      { person: { id: by.personId }, receivedAt: new Date() },
    ),
  )
  const [reason, setReason] = useState<string | null>(isSlip ? words.fix.slip : null)
  const [error, setError] = useState<string | null>(null)
  const goOn = useGoOn()
  const { piece, repeat, factorLevel } = stood
  const place = { batchId: dough.id, measureId: measure.id, piece, repeat }
  const whyKey = `${fixKey(by.personId, place)} why`
  const name = placeName({ piece, level: factorLevel, repeat })
  const was = shownValue(wrong.value, wrong.unit, locale)
  const leave = () => openDough(dough.id)

  const keep = async (why: string, value: string, confirmed: boolean) => {
    try {
      const isKept = await keepCorrection({
        place,
        level: factorLevel,
        wrong,
        was,
        value,
        unit: measure.unit,
        reason: why,
        confirmed,
        by,
        shown: { code: dough.code, measure: measure.name },
      })
      if (!isKept) {
        setError(words.fix.taken)
        return
      }
    } catch {
      setError(words.reading.notKept)
      return
    }
    void sendOutbox()
    await tablet.drafts.delete(whyKey)
    await goOn(atDough(dough.id))
  }
  const pinFirst = usePinFirst<{ why: string; value: string; isConfirmed: boolean }>({
    isSlip,
    pinAt,
    by,
    onPut: ({ why, value, isConfirmed }) => void keep(why, value, isConfirmed),
  })

  if (pinFirst.pad) return pinFirst.pad
  const told = (
    <p>{say(words.fix.was, 'en', { value: was, who: wrong.who, at: shownTime(wrong.at, { locale, timeZone }) })}</p>
  )
  if (reason !== null)
    return (
      <NumberScreen
        code={dough.code}
        measure={measure}
        placeName={name}
        draft={fixKey(by.personId, place)}
        locale={locale}
        error={error}
        onBack={() => void leave()}
        onKeep={(value, isConfirmed) => pinFirst.put({ why: reason, value, isConfirmed })}
      >
        {told}
      </NumberScreen>
    )
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{say(words.dough.title, 'en', { code: dough.code })}</h1>
        <Tap look="quiet" onTap={() => void leave()}>
          {words.reading.back}
        </Tap>
      </div>
      <p className="what">{sayName(words.place.measured, 'en', { measure: measure.name, place: name })}</p>
      {told}
      {correctsAny || wrong.personId === by.personId ? (
        <Reasons reasons={Object.values(words.fix.reasons)} draft={whyKey} onChoose={setReason} />
      ) : (
        <p className="attention">{words.fix.notYours}</p>
      )}
    </div>
  )
}
