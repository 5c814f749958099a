import { Cell } from '@/lib/ui/cell'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { PlanPart } from './plan-seen'

/** The chance that the plan finds what is worth having, or why no verdict will come of it. */
export function PowerSection({ plan, words, format, language }: PlanPart) {
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
              text.powerHalf,
              text.powerDays[plan.declared.holdsFor],
            ],
            language,
          )}
        </p>
      </div>
    </Section>
  )
}
