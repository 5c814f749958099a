import { Cell } from '@/lib/ui/cell'
import { SheetTable } from '@/lib/ui/sheet-table'
import { StateWord } from '@/lib/ui/state-word'
import { formatDateTime } from '@/lib/words/format/date'
import { formatDay } from '@/lib/words/format/day'
import { plainNumber } from '@/lib/words/format/plain-number'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { LotsShown } from './lots'

type Row = LotsShown['inUse']['rows'][number]
type Shared = { bakery: { locale: string; timeZone: string }; text: Words['lots']; language: Language }

/** Lots with their days, what was measured of them, and who wrote them down. */
export function LotTable({
  rows,
  caption,
  isEnded = false,
  ...shared
}: Shared & { rows: readonly Row[]; caption: string; isEnded?: boolean }) {
  const { text } = shared
  return (
    <SheetTable
      caption={caption}
      captionHidden
      columns={[
        { key: 'code', label: text.code },
        { key: 'received', label: text.received },
        { key: 'best-before', label: text.bestBefore },
        { key: 'strength', label: text.strength },
        { key: 'note', label: text.noteColumn },
        { key: 'entered', label: text.entered },
        ...(isEnded ? [{ key: 'ended', label: text.why }] : []),
      ]}
    >
      {rows.map((row) => (
        <LotRow key={row.id} row={row} {...shared} />
      ))}
    </SheetTable>
  )
}

function LotRow({ row, bakery, text, language }: Shared & { row: Row }) {
  const { strength, entered, ended, wasSaid, sameAs } = row
  return (
    <tr>
      <Cell head>{row.code}</Cell>
      <Cell whole>{formatDay(row.receivedOn, bakery.locale)}</Cell>
      <Cell whole>{bestBeforeOf(row, bakery.locale, text, language)}</Cell>
      <Cell>
        {strength === null
          ? text.notMeasured
          : say(text.strengthText, language, {
              of: strength.of,
              value: plainNumber(strength.value, { locale: bakery.locale, significant: 12 }),
              unit: strength.unit,
            })}
      </Cell>
      <Cell>{row.note}</Cell>
      <Cell>
        {wasSaid ? <span className="block">{text.said}</span> : null}
        {entered === null
          ? null
          : say(wasSaid ? text.confirmedBy : text.whoAt, language, {
              who: entered.who,
              at: formatDateTime(entered.at, bakery),
            })}
      </Cell>
      {ended === null ? null : (
        <Cell>
          {sameAs === null ? text.ends[ended.why] : say(text.isOther, language, { code: sameAs })}
          <span className="block text-small text-ink-2">
            {say(text.whoAt, language, { who: ended.who, at: formatDateTime(ended.at, bakery) })}
          </span>
        </Cell>
      )}
    </tr>
  )
}

function bestBeforeOf({ bestBefore, isPast, ended }: Row, locale: string, text: Words['lots'], language: Language) {
  if (bestBefore === null) return text.noBestBefore
  const day = formatDay(bestBefore, locale)
  return isPast && ended === null ? <StateWord word={say(text.past, language, { day })} level={0} tone="warn" /> : day
}
