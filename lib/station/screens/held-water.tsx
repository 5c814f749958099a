import { useState } from 'react'
import { isOwnSlip } from '../../kitchen/conduct/is-own-slip.input'
import { massFromUnit } from '../../words/format/mass'
import { say } from '../../words/say'
import { stationHeld as words } from '../../words/en/station-held'
import { stationMixing } from '../../words/en/station-mixing'
import type { KeptBy } from '../keep/keep-entry'
import { openDough } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import { judgeMass } from '../outbox/judge-mass'
import { lotsOfStanding, lotsToSend } from '../outbox/lots-of-line'
import { plainMass } from '../outbox/plain-mass'
import type { LineStanding, StoodLine } from '../outbox/stand-of-line'
import { readTyped } from '../outbox/typed-digits'
import { waterAfter, waterInDough, type WaterChange } from '../outbox/water-in-dough'
import { shownTyped, shownValue } from '../ui/figures'
import { massWriter } from '../ui/masses'
import { NumberPad } from '../ui/number-pad'
import { saidOfLine } from '../ui/said-of-line'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'
import { useKeepingLine } from './use-keeping-line'
import { usePinFirst } from './use-pin-first'

type HeldWaterProps = {
  kept: KeptList
  line: StoodLine & { stands: LineStanding }
  change: WaterChange
  by: KeptBy
  /** When whoever is on the tablet typed their PIN here, ms. */
  pinAt: number
  locale: string
}

/** By the feel of the dough some water stays out, or some more goes in: what is in it then takes the place of what was weighed. */
export function HeldWater({ kept, line, change, by, pinAt, locale }: HeldWaterProps) {
  const { batchId, code, unit } = kept.list
  // What was opened is what is put right, also when somebody else puts it right meanwhile.
  const [wrong] = useState(line.stands)
  const [isSlip] = useState(() =>
    isOwnSlip(
      { person: { id: wrong.personId }, receivedAt: new Date(wrong.at) },
      { person: { id: by.personId }, receivedAt: new Date() },
    ),
  )
  const { keep, error, draft: lineDraft } = useKeepingLine(kept.list, line, by)
  const draft = `${lineDraft} ${change}`
  const { text, type, isLost } = useDraft(draft)
  const [fault, setFault] = useState<string | null>(null)
  const write = massWriter({ unit, locale })
  const shown = (mass: string) => shownValue(mass, unit, locale)
  const inDough = waterInDough({ ...line, stands: wrong }, unit)
  const planned = plainMass(line.target.massG, unit)
  const typed = readTyped(text ?? '')
  const after = typed === null ? null : waterAfter({ change, inDough, by: typed, planned })
  const mass = after?.outcome === 'mass' ? after.mass : null
  const { massG: targetG, toleranceG, stepG } = line.target
  const verdict = mass === null ? null : judgeMass({ massG: massFromUnit(Number(mass), unit), targetG, toleranceG })
  const lots = lotsOfStanding(wrong.lots, unit)
  const sent = lotsToSend(lots, null)
  const pinFirst = usePinFirst<{ mass: string; reason: string }>({
    isSlip,
    pinAt,
    by,
    onPut: (said) =>
      void keep(
        {
          said: { how: 'weighed', mass: said.mass, unit, ...(sent ? { lots: sent } : {}) },
          // The whole was shown before it was kept.
          confirmed: true,
          wrong: { standing: wrong, was: saidOfLine(wrong, write, stepG), reason: said.reason },
          draft,
        },
        lots,
      ),
  })
  if (pinFirst.pad) return pinFirst.pad
  const put = () => {
    if (typed === null || after === null) return
    if (after.outcome === 'mass')
      pinFirst.put({ mass: after.mass, reason: say(words.reason[change], 'en', { mass: shown(typed) }) })
    else if (after.outcome === 'all-held') setFault(say(words.allHeld, 'en', { mass: shown(inDough) }))
    else if (after.outcome === 'too-much') setFault(say(words.tooMuch, 'en', { mass: shown(planned) }))
  }
  const canKeep = after !== null && after.outcome !== 'none-typed'
  return (
    <div className="two">
      <section>
        <div className="heads">
          <h1>{say(words.title[change], 'en', { code })}</h1>
          <Tap look="quiet" onTap={() => void openDough(batchId, { weigh: line.key })}>
            {words.back}
          </Tap>
        </div>
        <p className="what">{words.ask[change]}</p>
        <p>{say(words.planned, 'en', { mass: write(targetG, stepG) })}</p>
        <p>{say(words.before, 'en', { mass: shown(inDough) })}</p>
        <p className="typed" aria-live="polite">
          {shownTyped(text ?? '', locale) || '…'}
          <small>{unit}</small>
        </p>
        <p role="status">{mass === null ? null : <b>{say(words.then, 'en', { mass: shown(mass) })}</b>}</p>
        {(verdict?.found === 'over' || verdict?.found === 'under') && <p className="attention">{words.off}</p>}
        <p role="alert" className="fault">
          {isLost ? stationMixing.line.notKept : (fault ?? error)}
        </p>
      </section>
      <NumberPad
        text={text ?? ''}
        onType={(next) => {
          setFault(null)
          type(next)
        }}
        locale={locale}
        keep={canKeep && typed !== null ? say(words.keep[change], 'en', { mass: shown(typed) }) : words.keepNothing}
        canKeep={canKeep}
        onKeep={put}
      />
    </div>
  )
}
