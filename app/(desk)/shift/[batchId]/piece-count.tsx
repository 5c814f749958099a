import { rulesOf } from '@/lib/ui/rules-of'
import { becomesOfPieces } from '@/lib/kitchen/shifts/count-fault.input'
import { countPiecesInput } from '@/lib/kitchen/shifts/count-pieces.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorField } from '@/lib/ui/floor-field'
import { FormDone } from '@/lib/ui/form-done'
import { Section } from '@/lib/ui/section'
import { momentNear } from '@/lib/words/format/moment-near'
import { say } from '@/lib/words/say'
import { count } from './actions'
import type { BatchPart } from './batch-view'

/** How many pieces came out, and how many of them are good. */
export function PieceCount({ batch, bakery, words: { pieces: text }, language }: BatchPart) {
  return (
    <Section id="pieces" title={text.title} screenOnly>
      {batch.count ? (
        <p className="mb-2 text-ink-2">
          {say(text.last, language, { who: batch.count.who, at: momentNear(batch.count.at, new Date(), bakery) })}
        </p>
      ) : null}
      <ActionForm
        rules={rulesOf(countPiecesInput)}
        action={count.bind(null, batch.id, batch.revision)}
        idPrefix="count-"
      >
        <div className="flex max-w-column flex-wrap items-end gap-4">
          <div className="w-36">
            <FloorField name="piecesMade" type="count" label={text.made} defaultValue={batch.piecesMade?.toString()} />
          </div>
          <div className="w-36">
            <FloorField name="piecesGood" type="count" label={text.good} defaultValue={batch.piecesGood?.toString()} />
          </div>
          {becomesOfPieces.map((what) => (
            <div key={what} className="w-36">
              <FloorField name={what} type="count" label={text[what]} defaultValue={batch.count?.[what]?.toString()} />
            </div>
          ))}
          <FloorButton tone="plain">{text.keep}</FloorButton>
        </div>
        <p className="mt-2 max-w-measure text-ink-2">{text.became}</p>
        <FormDone word={text.keptWord} text={text.kept} />
      </ActionForm>
    </Section>
  )
}
