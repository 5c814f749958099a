import { figure, type Figure } from '@/lib/kitchen/stores/ingredient-facts.input'
import type { FigureDoubt } from '@/lib/kitchen/stores/rules'
import { Cell } from '@/lib/ui/cell'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import { SheetTable } from '@/lib/ui/sheet-table'
import { plainNumber } from '@/lib/words/format/plain-number'
import type { Words } from '@/lib/words/words'

type CompositionProps = {
  figures: readonly { figure: Figure; gPer100G: number; source: string }[]
  doubts: readonly FigureDoubt[]
  locale: string
  stores: Words['stores']
}

/** The composition, each figure beside its source; what is not known says so. */
export function Composition({ figures, doubts, locale, stores }: CompositionProps) {
  const { ingredient: text } = stores
  if (figures.length === 0) {
    return (
      <Section id="composition" title={text.composition}>
        <p className="max-w-measure">{text.compositionUnknown}</p>
      </Section>
    )
  }
  return (
    <Section id="composition" title={text.composition} note={text.compositionNote}>
      {doubts.map((doubt) => (
        <Notice key={doubt} tone="warn" word={text.doubt}>
          {text.doubts[doubt]}
        </Notice>
      ))}
      <SheetTable
        caption={text.composition}
        captionHidden
        columns={[
          { key: 'figure', label: text.figure },
          { key: 'value', label: text.gPer100G, numeric: true },
          { key: 'source', label: text.source },
        ]}
      >
        {figure.options.map((each) => {
          const stated = figures.find((row) => row.figure === each)
          return (
            <tr key={each}>
              <Cell head>{stores.figures[each]}</Cell>
              <Cell numeric>{stated ? plainNumber(stated.gPer100G, { locale }) : text.unknown}</Cell>
              <Cell>{stated?.source ?? text.unknownNote}</Cell>
            </tr>
          )
        })}
      </SheetTable>
    </Section>
  )
}
