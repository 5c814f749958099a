import type { AnswerOf } from '@/lib/kitchen/query'
import type { listLots } from '@/lib/kitchen/stores/list-lots'
import { EmptyState } from '@/lib/ui/empty-state'
import { ListFoot } from '@/lib/ui/list-foot'
import { Notice } from '@/lib/ui/notice'
import { Section } from '@/lib/ui/section'
import type { Language, Words } from '@/lib/words/words'
import { EndLotForm, ReceiveLotForm } from './lot-forms'
import { LotTable } from './lot-table'
import { LotsToConfirm, type ToConfirmShown } from './lots-to-confirm'

export type LotsShown = AnswerOf<typeof listLots>

type LotsProps = {
  ingredientId: string
  lots: LotsShown
  toConfirm: ToConfirmShown
  bakery: { locale: string; timeZone: string }
  words: Pick<Words, 'lots' | 'desk'>
  language: Language
}

/** What came in of the ingredient, latest first, and for those who write in the stores how more comes in and is ended. */
export function Lots({ ingredientId, lots, toConfirm, bakery, words, language }: LotsProps) {
  const { lots: text, desk } = words
  const shared = { bakery, text, language }
  const foot = { address: `/stores/ingredients/${ingredientId}`, words: desk, language }
  return (
    <>
      <Section id="lots" title={text.title} note={text.note}>
        {lots.mayBeUsed ? null : (
          <Notice tone="warn" word={text.allergensUnknown}>
            {text.allergensUnknownText}
          </Notice>
        )}
        {lots.inUse.count === 0 ? (
          <EmptyState sentence={text.none} />
        ) : (
          <>
            <LotTable {...shared} rows={lots.inUse.rows} caption={text.title} />
            {lots.inUse.rows.some(({ isPast }) => isPast) ? (
              <p className="mt-2 max-w-measure font-semibold text-warn">{text.pastNote}</p>
            ) : null}
            <ListFoot {...foot} page={lots.inUse} list={text.title} anchor="lots" />
          </>
        )}
      </Section>
      <LotsToConfirm lots={toConfirm} bakery={bakery} words={words} language={language} />
      {lots.ended.count === 0 ? null : (
        <Section id="ended-lots" title={text.ended} note={text.endedNote}>
          <LotTable {...shared} rows={lots.ended.rows} caption={text.ended} isEnded />
          <ListFoot {...foot} page={lots.ended} list={text.ended} anchor="ended-lots" />
        </Section>
      )}
      {lots.mayEdit ? (
        <>
          <ReceiveLotForm ingredientId={ingredientId} today={lots.today} bakery={bakery} words={words} />
          {lots.inUse.count + toConfirm.count === 0 ? null : (
            <EndLotForm
              rows={lots.inUse.rows}
              toConfirm={toConfirm.rows}
              bakery={bakery}
              words={words}
              language={language}
            />
          )}
        </>
      ) : null}
    </>
  )
}
