import { rulesOf } from '@/lib/ui/rules-of'
import { sayGap } from '@/app/(desk)/say-gap'
import { nextState } from '@/lib/kitchen/batches/rules'
import { beginBatchInput } from '@/lib/kitchen/shifts/begin-batch.input'
import { moveBatchInput } from '@/lib/kitchen/shifts/move-batch.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorCheck } from '@/lib/ui/floor-check'
import { FloorField } from '@/lib/ui/floor-field'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { begin, moveOn } from './actions'
import type { BatchPart } from './batch-view'

/** The one thing to do next with a batch, and what stands before it. */
export function NextStep({ batch, bakery, words, language }: BatchPart) {
  const text = words.batch
  const to = nextState(batch.state)
  if (batch.state !== 'waiting' && to === null) return null
  const gaps = to === 'measured' ? batch.gaps : []
  return (
    <section id="next" aria-label={text.nextStep} className="mt-6 print:hidden">
      {to === null ? (
        <ActionForm
          rules={rulesOf(beginBatchInput)}
          key="begin"
          action={begin.bind(null, batch.id, batch.revision)}
          idPrefix="begin-"
        >
          <div className="grid gap-5">
            {batch.cleanDownFirst ? (
              <FloorCheck name="cleanDownDone" label={text.cleanDownDone} hint={text.cleanDownHint} />
            ) : null}
            {batch.firstCode ? (
              <FloorField
                name="swapWhy"
                type="text"
                label={say(text.swapWhy, language, { code: batch.firstCode })}
                hint={say(text.swapHint, language, { code: batch.firstCode })}
                required
              />
            ) : null}
            <div>
              <FloorButton tone={batch.firstCode ? 'plain' : 'go'}>{text.begin}</FloorButton>
            </div>
          </div>
        </ActionForm>
      ) : (
        <ActionForm
          rules={rulesOf(moveBatchInput)}
          key={to}
          action={moveOn.bind(null, batch.id, batch.revision, to)}
          idPrefix="move-"
        >
          {gaps.length > 0 ? (
            <div className="mb-4 grid gap-4">
              <p className="max-w-measure font-semibold text-warn">{text.gapsTitle}</p>
              <ul className="max-w-measure list-disc pl-5">
                {gaps.map((gap) => {
                  const line = sayGap(gap, bakery, wordsIn(language), language)
                  return <li key={gap.kind === 'outside' ? gap.readingId : line}>{line}</li>
                })}
              </ul>
              <FloorField name="why" type="text" label={text.gapsWhy} hint={text.gapsHint} required />
            </div>
          ) : null}
          <FloorButton tone={gaps.length > 0 ? 'plain' : 'go'}>
            {gaps.length > 0 ? text.measuredWithGaps : text.steps[to]}
          </FloorButton>
        </ActionForm>
      )}
    </section>
  )
}
