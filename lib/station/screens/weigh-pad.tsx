import { useState, type ReactNode } from 'react'
import { massFromUnit } from '../../words/format/mass'
import { say, sayName } from '../../words/say'
import { stationLots } from '../../words/en/station-lots'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { SaidOfLine } from '../keep/keep-weighing'
import { remember } from '../keep/tablet'
import type { WeighList } from '../keep/weigh-facts'
import { judgeMass, type MassVerdict } from '../outbox/judge-mass'
import { lotsToSend, massOfLots } from '../outbox/lots-of-line'
import type { OnScale } from '../outbox/line-on-scale'
import type { StoodLine } from '../outbox/stand-of-line'
import { readTyped } from '../outbox/typed-digits'
import { shownTyped, shownValue } from '../ui/figures'
import type { MassWriter } from '../ui/masses'
import { NumberPad } from '../ui/number-pad'
import { Tap } from '../ui/tap'
import { useDraft } from '../ui/use-draft'
import { LineLots, type LotsOfPad } from './line-lots'

type WeighPadProps = {
  line: StoodLine
  dough: Pick<WeighList, 'batchId' | 'code' | 'unit'>
  on: OnScale
  write: MassWriter
  locale: string
  /** Under what a half-typed mass is kept. */
  draft: string
  lots: LotsOfPad
  /** What went wrong with keeping it. */
  error: string | null
  onSaid(said: SaidOfLine, isConfirmed: boolean): void
  /** What is told above and beside the pad, and what else can be done below it. */
  children: ReactNode
  more?: ReactNode
}

type Asked = { said: SaidOfLine; fault: string; keep: string }

/** The mass that the scale shows of a line: typed, said when it is off, and kept at a tap. */
export function WeighPad(q: WeighPadProps) {
  const { line, on, write, locale, draft, lots, error, onSaid, children, more } = q
  const { batchId, code: dough, unit } = q.dough
  const { text, type, isLost } = useDraft(draft)
  const [asked, setAsked] = useState<Asked | null>(null)
  const [isTyping, setTyping] = useState(true)
  const targetG = line.target.massG
  const isNoneAsked = targetG === 0
  const typed = readTyped(text ?? '')
  const { given, now } = lots.chosen
  const isShared = given.length > 0
  const gave = typed !== null && Number(typed) > 0 ? typed : null
  const mass = isShared ? massOfLots(lots.chosen, gave) : typed
  const verdict =
    mass === null ? null : judgeMass({ massG: massFromUnit(Number(mass), unit), targetG, toleranceG: on.toleranceG })
  const faultOf = (found: MassVerdict): string | null => {
    switch (found?.found) {
      case 'over':
        return say(words.line.over, 'en', { by: write(found.byG, on.stepG) })
      case 'under':
        return say(words.line.under, 'en', { by: write(found.byG, on.stepG) })
      case 'nothing':
        return say(words.line.nothing, 'en', { target: write(on.shownG, on.stepG) })
      default:
        return null
    }
  }
  const shown = mass === null ? null : shownValue(mass, unit, locale)
  const withLots = (typedOf: string | null) => {
    const sent = lotsToSend(lots.chosen, typedOf)
    return sent ? { lots: sent } : {}
  }
  const keep = () => {
    setTyping(false)
    if (mass === null || shown === null) {
      if (isNoneAsked) onSaid({ how: 'left_out' }, false)
      return
    }
    const said = { how: 'weighed' as const, mass, unit, ...(Number(mass) > 0 ? withLots(gave) : {}) }
    const fault = faultOf(verdict)
    if (fault === null) onSaid(said, false)
    else setAsked({ said, fault, keep: sayName(words.line.keepOff, 'en', { mass: shown }) })
  }
  // More digits make it only more, so what is too much is said at once; of too little nobody knows yet.
  const within = on.coarserThanG === null ? words.line.within : words.line.withinScale
  const said = verdict?.found === 'over' ? faultOf(verdict) : verdict?.found === 'within' ? within : null
  const live = asked === null ? said : null
  // On a scale that cannot tell nobody has seen that it is as planned; of several lots each was weighed.
  const mayTick = line.isSame && on.coarserThanG === null && !isShared
  const isRestUnsaid = isShared && gave !== null && now === null
  return (
    <div className="weigh">
      <section>
        {children}
        <p className="typed" aria-live="polite">
          {shownTyped(text ?? '', locale) || '…'}
          <small>{unit}</small>
        </p>
        {isShared && shown !== null && <b>{say(stationLots.whole, 'en', { mass: shown })}</b>}
        <p role="status" className={`told ${live !== null && verdict?.found === 'over' ? 'attention' : ''}`}>
          {live}
        </p>
        <p role="alert" className="fault">
          {isLost ? words.line.notKept : isTyping ? null : error}
        </p>
      </section>
      {asked ? (
        <div role="alert" className="odd">
          <p>{asked.fault}</p>
          <Tap
            look="main"
            onTap={() => {
              setAsked(null)
              type('')
            }}
          >
            {words.line.weighAgain}
          </Tap>
          <Tap look="plain" onTap={() => onSaid(asked.said, true)}>
            {asked.keep}
          </Tap>
        </div>
      ) : (
        <NumberPad
          text={text ?? ''}
          onType={(next) => {
            setTyping(true)
            type(next)
          }}
          locale={locale}
          keep={
            shown === null
              ? isNoneAsked
                ? words.line.keepNone
                : words.line.keepNothing
              : say(words.line.keep, 'en', { mass: shown })
          }
          canKeep={(shown !== null || isNoneAsked) && !isRestUnsaid}
          onKeep={keep}
        />
      )}
      <div className="more">
        {asked === null && !isNoneAsked && (
          <LineLots
            {...lots}
            isOffered={line.lots.length > 0}
            onLabel={({ code }) => {
              const { ingredientId, name } = line
              const label = { ingredientId, ingredient: name, code }
              void remember('photographing', { batchId, code: dough, piece: null, label })
            }}
            typed={gave}
            shown={(of) => shownValue(of, unit, locale)}
            onGiven={() => {
              setTyping(true)
              type('')
            }}
          />
        )}
        {asked === null && (mayTick || (!isNoneAsked && !isShared)) && (
          <div className="acts">
            {mayTick && (
              <Tap look="plain" onTap={() => onSaid({ how: 'ticked', ...withLots(null) }, false)}>
                {words.line.asPlanned}
              </Tap>
            )}
            {!isNoneAsked && !isShared && (
              <Tap
                look="plain"
                onTap={() =>
                  setAsked({
                    said: { how: 'left_out' },
                    fault: say(words.line.nothing, 'en', { target: write(on.shownG, on.stepG) }),
                    keep: words.line.leaveOut,
                  })
                }
              >
                {words.line.leaveOut}
              </Tap>
            )}
          </div>
        )}
        {more}
      </div>
    </div>
  )
}
