import { Cell } from '@/lib/ui/cell'
import { GroupRow } from '@/lib/ui/group-row'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { formatDay } from '@/lib/words/format/day'
import { say } from '@/lib/words/say'
import { DoughName } from '../dough-name'
import { allergenList } from '@/lib/words/allergen-list'
import type { PlanPart, PlanSeen } from './plan-seen'
import { WarningList } from './warning-list'

/** Which dough when, under which code, and where to clean down; or that the order is still to be drawn. */
export function OrderSection({
  plan,
  days: dated,
  words,
  format,
  language,
  locale,
}: PlanPart & { days: PlanSeen['days']; locale: string }) {
  const { trials: text, stores } = words
  const { order } = plan
  if (!order) {
    return (
      <Section id="order" title={text.plan.order}>
        <p>{text.plan.orderLater}</p>
      </Section>
    )
  }
  const columns = order.isKeyOpen ? 4 : 3
  const dayLabel = (day: number) => {
    const date = dated.find(({ number }) => number === day)?.day ?? null
    return date === null
      ? say(text.plan.day, language, { day })
      : say(text.plan.dayDated, language, { day, date: formatDay(date, locale) })
  }
  const days = [...new Set(order.batches.map(({ day }) => day))]
  return (
    <Section id="order" title={text.plan.order} note={order.isKeyOpen ? text.plan.orderNote : text.plan.orderNoteCoded}>
      <WarningList
        warnings={plan.warnings.filter(({ code }) => code === 'place-tied-to-allergen')}
        words={words}
        format={format}
        language={language}
      />
      <SheetTable
        caption={text.plan.order}
        captionHidden
        columns={[
          { key: 'place', label: text.plan.place, numeric: true },
          { key: 'code', label: text.plan.code },
          ...(order.isKeyOpen ? [{ key: 'dough', label: text.plan.doughColumn }] : []),
          { key: 'before', label: text.plan.before },
        ]}
      >
        {days.flatMap((day) => {
          const after = order.cleanDownAfterDay.find((each) => each.day === day)
          return [
            <GroupRow key={day} label={dayLabel(day)} columns={columns} />,
            ...order.batches
              .filter((batch) => batch.day === day)
              .map((batch) => (
                <tr key={batch.code}>
                  <Cell numeric>{batch.place}</Cell>
                  <Cell head>{batch.code}</Cell>
                  {batch.arm === null ? null : (
                    <Cell>
                      <DoughName position={batch.arm} name={plan.arms[batch.arm]?.name} text={text} />
                    </Cell>
                  )}
                  <Cell>
                    {batch.cleanDownOf.length > 0
                      ? say(text.plan.cleanDown, language, { list: allergenList(batch.cleanDownOf, stores, language) })
                      : null}
                  </Cell>
                </tr>
              )),
            ...(after
              ? [
                  <tr key={`after-${day}`}>
                    <td colSpan={columns}>
                      {say(text.plan.cleanAfter, language, { list: allergenList(after.of, stores, language) })}
                    </td>
                  </tr>,
                ]
              : []),
          ]
        })}
      </SheetTable>
    </Section>
  )
}
