import type { Knower } from '@/lib/kitchen/key/list-knowers'
import { SheetTable } from '@/lib/ui/sheet-table'
import { Cell } from '@/lib/ui/cell'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** Who opened the key of a trial or of one of its doughs, and when. */
export function KnowerList({
  knowers,
  words,
  bakery,
  language,
}: {
  knowers: readonly Knower[]
  words: Words
  bakery: Parameters<typeof formatDateTime>[1]
  language: Language
}) {
  const text = words.results.knew
  return (
    <SheetTable
      caption={text.title}
      captionHidden
      columns={[
        { key: 'at', label: words.audit.at },
        { key: 'who', label: words.audit.what },
      ]}
    >
      {knowers.map(({ name, code, at }) => (
        <tr key={`${at.toISOString()} ${name} ${code ?? ''}`}>
          <Cell head>{formatDateTime(at, bakery)}</Cell>
          <Cell>
            {code === null ? say(text.openedAll, language, { name }) : say(text.openedOne, language, { name, code })}
          </Cell>
        </tr>
      ))}
    </SheetTable>
  )
}
