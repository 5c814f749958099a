import { useState } from 'react'
import { isOwnSlip } from '../../kitchen/conduct/is-own-slip.input'
import { say } from '../../words/say'
import { station } from '../../words/en/station'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { KeptBy } from '../keep/keep-entry'
import type { NewWeighing } from '../keep/keep-weighing'
import type { KeptList, LotOffered } from '../keep/weigh-facts'
import { lineOnScale } from '../outbox/line-on-scale'
import { lotsOfStanding } from '../outbox/lots-of-line'
import type { LineStanding, StoodLine } from '../outbox/stand-of-line'
import { shownTime } from '../ui/figures'
import { massWriter } from '../ui/masses'
import { saidOfLine } from '../ui/said-of-line'
import { useLots } from '../ui/use-lots'
import { LineTold } from './line-told'
import { LotChoice } from './lot-choice'
import { Reasons } from './reasons'
import { useKeepingLine } from './use-keeping-line'
import { usePinFirst } from './use-pin-first'
import { WeighPad } from './weigh-pad'

type FixLineProps = {
  kept: KeptList
  line: StoodLine & { stands: LineStanding }
  lines: readonly StoodLine[]
  /** The lot that is offered first. */
  last: LotOffered | null
  /** Lots of whose labels there are photos on the tablet. */
  labels: readonly string[]
  by: KeptBy
  /** When whoever is on the tablet typed their PIN here, ms. */
  pinAt: number
  locale: string
  timeZone: string
}

/** What is written of a line is put right: a slip of one's own at once, anything else for a reason and under one's PIN. */
export function FixLine({ kept, line, lines, last, labels, by, pinAt, locale, timeZone }: FixLineProps) {
  // What was opened is what is put right, also when somebody else puts it right meanwhile.
  const [wrong] = useState(line.stands)
  const [isSlip] = useState(() =>
    isOwnSlip(
      { person: { id: wrong.personId }, receivedAt: new Date(wrong.at) },
      { person: { id: by.personId }, receivedAt: new Date() },
    ),
  )
  const [reason, setReason] = useState<string | null>(isSlip ? station.fix.slip : null)
  const { keep, error, draft } = useKeepingLine(kept.list, line, by)
  const write = massWriter({ unit: kept.list.unit, locale })
  const was = saidOfLine(wrong, write, line.target.stepG)
  const on = lineOnScale(line, kept.list, kept.swaps)
  const fixDraft = `${draft} fix`
  const { chosen, choose } = useLots(fixDraft, lotsOfStanding(wrong.lots, kept.list.unit))
  const [isChoosing, setChoosing] = useState(false)
  const pinFirst = usePinFirst<Pick<NewWeighing, 'said' | 'confirmed'> & { why: string }>({
    isSlip,
    pinAt,
    by,
    onPut: ({ why, ...what }) =>
      void keep({ ...what, wrong: { standing: wrong, was, reason: why }, draft: fixDraft }, chosen),
  })
  const told = (
    <>
      <LineTold kept={kept} line={line} lines={lines} on={on} write={write} />
      <p>
        {say(words.line.stands, 'en', {
          value: was,
          who: wrong.who,
          at: shownTime(wrong.at, { locale, timeZone }),
        })}
      </p>
    </>
  )
  if (pinFirst.pad) return pinFirst.pad
  if (reason === null)
    return (
      <div className="narrow">
        {told}
        <Reasons reasons={Object.values(words.line.reasons)} draft={`${fixDraft} why`} onChoose={setReason} />
      </div>
    )
  if (isChoosing) return <LotChoice {...{ line, lines, chosen, choose, last }} onDone={() => setChoosing(false)} />
  return (
    <WeighPad
      line={line}
      dough={kept.list}
      on={on}
      write={write}
      locale={locale}
      draft={fixDraft}
      lots={{ chosen, choose, last, labels, onPick: () => setChoosing(true) }}
      error={error}
      onSaid={(said, confirmed) => pinFirst.put({ said, confirmed, why: reason })}
    >
      {told}
    </WeighPad>
  )
}
