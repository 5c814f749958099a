import { nextState } from '@/lib/kitchen/shifts/rules'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorCheck } from '@/lib/ui/floor-check'
import { FloorField } from '@/lib/ui/floor-field'
import { say } from '@/lib/words/say'
import { begin, moveOn } from './actions'
import type { BatchPart } from './batch-view'

/** The one thing to do next with a batch, and what stands before it. */
export function NextStep({ batch, bakery, words, language }: BatchPart) {
  const text = words.batch
  const to = nextState(batch.state)
  if (batch.state !== 'waiting' && to === null) return null
  const names = new Map(batch.measures.map(({ id, name }) => [id, name]))
  const missing = batch.missing.map(({ measureId, have, of }) => say(text.missing, language, { name: names.get(measureId) ?? '', have, of }))
  return (
    <section id="next" aria-label={text.nextStep} className="mt-6 print:hidden">
      {to === null ? (
        <ActionForm key="begin" action={begin.bind(null, batch.id, batch.revision)} idPrefix="begin-">
          <div className="grid gap-5">
            {batch.cleanDownFirst ? <FloorCheck name="cleanDownDone" label={text.cleanDownDone} hint={text.cleanDownHint} /> : null}
            {batch.firstCode ? (
              <FloorField
                name="swapWhy"
                type="text"
                label={say(text.swapWhy, language, { code: batch.firstCode })}
                hint={say(text.swapHint, language, { code: batch.firstCode })}
                maxLength={300}
                required
              />
            ) : null}
            <div>
              <FloorButton tone={batch.firstCode ? 'plain' : 'go'}>{text.begin}</FloorButton>
            </div>
          </div>
        </ActionForm>
      ) : (
        <ActionForm key={to} action={moveOn.bind(null, batch.id, batch.revision, to)} idPrefix="move-">
          {to === 'measured' && missing.length > 0 ? (
            <p className="mb-3 max-w-measure font-semibold text-warn">
              {say(text.stillMissing, language, { list: new Intl.ListFormat(bakery.locale, { type: 'unit' }).format(missing) })}
            </p>
          ) : null}
          <FloorButton tone={to === 'measured' && missing.length > 0 ? 'plain' : 'go'}>{text.steps[to]}</FloorButton>
        </ActionForm>
      )}
    </section>
  )
}
