import { useEffect, useState } from 'react'
import { countFault } from '../../kitchen/shifts/count-fault.input'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationCounts as words } from '../../words/en/station-counts'
import type { FloorDough } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { countDraft, keepCount } from '../keep/keep-count'
import { atDough, openDough, tablet } from '../keep/tablet'
import { counted, readCount, type Counted, type StoodCount } from '../outbox/count-of-dough'
import { sendOutbox } from '../talk/send-outbox'
import { NumberPad } from '../ui/number-pad'
import { Tap } from '../ui/tap'
import { useGoOn } from '../ui/use-go-on'
import { Cautions } from './cautions'

type Typed = Partial<Record<Counted, string>>
type CountProps = { dough: FloorDough; stands: StoodCount | null; by: KeptBy; locale: string }

/** One count: a figure is tapped and typed, beginning from what stands; what nobody says stays unsaid. */
export function CountScreen({ dough, stands, by, locale }: CountProps) {
  const [typed, setTyped] = useState<Typed>(() => typedOf(stands))
  const [at, setAt] = useState<Counted>('made')
  const [error, setError] = useState<string | null>(null)
  const goOn = useGoOn()
  const draft = countDraft(by.personId, dough.id)
  useEffect(() => {
    void tablet.drafts.get(draft).then((kept) => {
      if (kept) setTyped(JSON.parse(kept.text) as Typed)
    })
  }, [draft])
  const type = (text: string) => {
    const next = { ...typed, [at]: text.slice(0, 5) }
    setTyped(next)
    setError(null)
    tablet.drafts.put({ place: draft, text: JSON.stringify(next) }).catch(() => setError(station.reading.notKept))
  }
  const { made, good, ...became } = readCount(typed)
  const count = made === null || good === null ? null : { made, good, ...became }
  const fault = count && countFault(count)
  const keep = async () => {
    if (!count || fault) return
    try {
      await keepCount({ dough, count, by })
    } catch {
      setError(station.reading.notKept)
      return
    }
    void sendOutbox()
    await goOn(atDough(dough.id))
  }
  const gone = Object.values(became).reduce<number>((sum, pieces) => sum + (pieces ?? 0), 0)
  return (
    <div className="two">
      <section>
        <div className="heads">
          <h1>{say(words.of, 'en', { code: dough.code })}</h1>
          <Tap look="quiet" onTap={() => void openDough(dough.id)}>
            {station.reading.back}
          </Tap>
        </div>
        <div className="acts times">
          {counted.map((what) => (
            <Tap key={what} look="plain" pressed={what === at} onTap={() => setAt(what)}>
              {words.what[what]}
              <br />
              <b>{typed[what] || words.unsaid}</b>
            </Tap>
          ))}
        </div>
        <p role="alert" className="fault">
          {error ?? (fault && (fault.code === 'more-gone' ? words.moreGone : words.moreGood))}
        </p>
        {count === null && <p>{words.all}</p>}
        {count && !fault && <p>{say(words.left, 'en', { count: count.made - gone })}</p>}
        {(became.sold ?? 0) + (became.given ?? 0) > 0 && (
          <>
            <Cautions dough={dough} />
            <p className="attention">{words.forOthers}</p>
          </>
        )}
      </section>
      <NumberPad
        text={typed[at] ?? ''}
        onType={type}
        locale={locale}
        keep={words.keep}
        canKeep={count !== null && fault === null}
        onKeep={() => void keep()}
        isWhole
      />
    </div>
  )
}

function typedOf(stands: StoodCount | null): Typed {
  return Object.fromEntries(
    counted.flatMap((what) => {
      const pieces = stands?.[what]
      return pieces === null || pieces === undefined ? [] : [[what, String(pieces)]]
    }),
  )
}
