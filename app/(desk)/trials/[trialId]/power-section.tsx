import { Cell } from '@/lib/ui/cell'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { Said } from '@/lib/words/text'
import type { PlanPart } from './plan-seen'

/** The chance that the plan finds what is worth having, or why no verdict will come of it. */
export function PowerSection({ isFrozen, ...part }: PlanPart & { isFrozen: boolean }) {
  const { plan, words, format, language } = part
  const { plan: text } = words.trials
  const { power } = plan
  if (power.outcome !== 'simulated') {
    return (
      <Section id="power" title={text.power}>
        <p className="max-w-measure">{text.powerNone[power.outcome]}</p>
      </Section>
    )
  }
  return (
    <Section id="power" title={text.power} note={text.powerNote}>
      <div className="max-w-measure">
        <SheetTable
          caption={text.power}
          captionHidden
          columns={[
            { key: 'true', label: text.powerTrue, numeric: true },
            { key: 'chance', label: text.powerChance, numeric: true },
          ]}
        >
          {power.rows.map((row) => (
            <tr key={row.truePct}>
              <Cell numeric>{format.pct(row.truePct)}</Cell>
              <Cell numeric>
                {say(text.powerSe, language, {
                  chance: format.pctWhole(row.powerShare),
                  se: format.pctFine(row.powerSe),
                })}
              </Cell>
            </tr>
          ))}
        </SheetTable>
        <p className="mt-2 text-small text-ink-2">
          {paragraph(
            [
              say(text.powerText, language, {
                runs: format.count(power.runs),
                batch: format.pct(power.batchCvPct),
                loaf: format.pct(power.loafCvPct),
              }),
              byDaySentence(power, part),
              text.powerHalf,
              text.powerDays[plan.declared.holdsFor],
              power.otherwise && isFrozen ? otherwiseSentence(power.otherwise, part) : null,
            ],
            language,
          )}
        </p>
        {power.otherwise && !isFrozen ? (
          <Notice tone="warn" word={text.powerOtherwiseWord}>
            {otherwiseSentence(power.otherwise, part)}
          </Notice>
        ) : null}
      </div>
    </Section>
  )
}

type Simulated = Extract<PlanPart['plan']['power'], { outcome: 'simulated' }>

/** What more mixing days would bring, and more doughs on a day. */
function otherwiseSentence(
  otherwise: NonNullable<Simulated['otherwise']>,
  { plan, words, format, language }: PlanPart,
): Said {
  return say(words.trials.plan.powerOtherwise, language, {
    true: format.pct(otherwise.truePct),
    mixingDays: format.count(otherwise.mixingDays),
    plannedDays: format.count(plan.declared.mixingDays),
    days: format.pctWhole(otherwise.daysPowerShare),
    batches: format.count(otherwise.batchesPerArm),
    plannedBatches: format.count(plan.declared.batchesPerArm),
    doughs: format.pctWhole(otherwise.doughsPowerShare),
  })
}

/** What was taken of how much a difference changes by day, and where that comes from. */
function byDaySentence({ armByDay }: Simulated, { plan, words, format, language }: PlanPart): string | null {
  const text = words.trials.plan.powerByDay
  if (plan.declared.holdsFor === 'these_days') return null
  if (armByDay === null) return text.notThen
  const spread = format.pct(armByDay.cvPct)
  const { from, trials: count } = armByDay
  switch (from) {
    case 'assumed':
      return say(text.assumed, language, { spread })
    case 'both':
      return say(text.both, language, { spread, count, assumed: format.pct(armByDay.assumedCvPct) })
    case 'own':
      return say(text.own, language, { spread, count })
    default:
      return from satisfies never
  }
}
