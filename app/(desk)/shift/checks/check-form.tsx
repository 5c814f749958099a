import { icePointC, offMostShareOfBlock, type CheckedKind } from '@/lib/kitchen/checks/judge-shown.input'
import { keepCheckInput } from '@/lib/kitchen/checks/log-check.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorField } from '@/lib/ui/floor-field'
import { FormDone } from '@/lib/ui/form-done'
import { rulesOf } from '@/lib/ui/rules-of'
import { momentNear } from '@/lib/words/format/moment-near'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { keep } from './actions'
import { checkFigures, type CheckBakery } from './check-figures'

export type Instrument = {
  id: string
  name: string
  kind: CheckedKind
  testMassG: number | null
  blockMl: number | null
  /** Null where it goes by the block that a check names. */
  offMost: number | null
  last: { at: Date; isGood: boolean; isToday: boolean } | null
}

type CheckFormProps = {
  instrument: Instrument
  bakery: CheckBakery
  words: Pick<Words, 'checks' | 'desk'>
  language: Language
}

/** One scale, thermometer or volume gauge: how its last check stands, how it is checked, and what it shows now. */
export function CheckForm({ instrument, bakery, words, language }: CheckFormProps) {
  const { checks: text, desk } = words
  const { id, name, kind, last } = instrument
  const figures = checkFigures(bakery)
  const unit = unitOf(kind, figures)
  const open = knownOpen(instrument)
  return (
    <section className="max-w-column border-t border-rule py-4" aria-labelledby={`check-of-${id}`}>
      <h3 id={`check-of-${id}`} className="text-lead font-semibold">
        {name}
      </h3>
      <p className={last?.isGood === false ? 'font-bold text-warn' : 'text-ink-2'}>
        {stateOf(last, bakery, text, language)}
      </p>
      <p className="mt-2 max-w-measure">{howTo(instrument, figures, text, language)}</p>
      <div className="print:hidden">
        <ActionForm rules={rulesOf(keepCheckInput)} action={keep.bind(null, id, unit)} idPrefix={`check-${id}-`}>
          <div className="mt-2 flex flex-wrap items-end gap-4">
            {open ? (
              <div className="w-56">
                <FloorField name={open} type="mass" required label={say(text[open], language, { unit })} />
              </div>
            ) : null}
            <div className="w-56">
              <FloorField
                name="shown"
                // A thermometer may show less than nothing, and number keys have no sign everywhere.
                type={kind === 'thermometer' ? 'text' : 'mass'}
                label={say(kind === 'volume_gauge' ? text.more : text.shown, language, { unit })}
              />
            </div>
            <FloorButton tone="plain" fullLabel={say(text.keepOf, language, { instrument: name })}>
              {text.keep}
            </FloorButton>
          </div>
          <FormDone word={desk.done} text={text.kept} />
        </ActionForm>
      </div>
    </section>
  )
}

function stateOf(last: Instrument['last'], bakery: CheckBakery, text: Words['checks'], language: Language) {
  if (!last) return text.states.never
  const { isToday, isGood } = last
  const state = isToday ? (isGood ? 'good' : 'failed') : isGood ? 'earlier' : 'earlierFailed'
  return say(text.states[state], language, { at: momentNear(last.at, new Date(), bakery) })
}

function unitOf(kind: CheckedKind, { massUnit, degree }: ReturnType<typeof checkFigures>): string {
  if (kind === 'volume_gauge') return 'mL'
  return kind === 'scale' ? massUnit : degree
}

/** The field for what it is checked with, where the bakery has not said that. */
function knownOpen({ kind, testMassG, blockMl }: Instrument): 'mass' | 'block' | null {
  if (kind === 'scale') return testMassG === null ? 'mass' : null
  return kind === 'volume_gauge' && blockMl === null ? 'block' : null
}

function howTo(
  { kind, testMassG, blockMl, offMost }: Instrument,
  { mass, volume, temp, degrees }: ReturnType<typeof checkFigures>,
  text: Words['checks'],
  language: Language,
) {
  if (offMost === null) return say(text.gaugeShare, language, { share: offMostShareOfBlock * 100 })
  if (kind === 'volume_gauge')
    return blockMl === null
      ? say(text.gaugeOpen, language, { off: volume(offMost) })
      : say(text.gauge, language, { block: volume(blockMl), off: volume(offMost) })
  if (kind === 'thermometer') return say(text.ice, language, { ice: temp(icePointC), off: degrees(offMost) })
  return testMassG === null
    ? say(text.scaleOpen, language, { off: mass(offMost) })
    : say(text.scale, language, { mass: mass(testMassG), off: mass(offMost) })
}
