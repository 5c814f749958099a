import { say, sayName } from '../../words/say'
import { stationDisplacement as words } from '../../words/en/station-displacement'
import { remember } from '../keep/tablet'
import type { InstrumentToday } from '../outbox/checks-of-day'
import { shownEnd } from '../ui/figures'
import { Tap } from '../ui/tap'

type GaugesProps = { gauges: readonly InstrumentToday[]; locale: string }

/** How the volume gauges stand today, where there is something to say. It holds nobody up. */
export function GaugesToday({ gauges, locale }: GaugesProps) {
  if (gauges.length === 0) return null
  return (
    <ul className="rows">
      {gauges.map((gauge) => (
        <li key={gauge.id}>
          {gauge.stand === 'toDo' && (
            <div className="acts">
              <p>{sayName(words.toCheck, 'en', { gauge: gauge.name })}</p>
              <Tap
                look="quiet"
                label={sayName(words.checkOf, 'en', { gauge: gauge.name })}
                onTap={() => void remember('checking', { instrumentId: gauge.id, isFromPad: true })}
              >
                {words.check}
              </Tap>
            </div>
          )}
          {gauge.stand === 'failed' && (
            <p className="attention">{sayName(words.failed, 'en', { gauge: gauge.name })}</p>
          )}
          <GaugeOff gauge={gauge} locale={locale} />
        </li>
      ))}
    </ul>
  )
}

/** By how much a gauge was off in its last check: told, and never taken off by itself. */
export function GaugeOff({
  gauge: { name, offMl },
  locale,
}: {
  gauge: Pick<InstrumentToday, 'name' | 'offMl'>
  locale: string
}) {
  if (offMl === null || offMl === 0) return null
  const off = shownEnd(Math.abs(offMl), 'mL', locale)
  return <p>{say(offMl > 0 ? words.tooMuch : words.tooLittle, 'en', { gauge: name, off })}</p>
}
