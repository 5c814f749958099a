import { noteCauseInput } from '@/lib/kitchen/shifts/note-cause.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorFold } from '@/lib/ui/floor-fold'
import { FloorField } from '@/lib/ui/floor-field'
import { rulesOf } from '@/lib/ui/rules-of'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { note } from './actions'
import type { BatchPart } from './batch-view'

/** What happened to the batch so far, and two taps to note something more: what it may be taken out for later. */
export function Causes({ batch, bakery, words: { causes: text }, language }: BatchPart) {
  if (!batch.isOpen && batch.causes.length === 0) return null
  return (
    <div className="mt-9 border-t-2 border-rule">
      {batch.causes.length > 0 ? (
        <div className="border-b-2 border-rule py-4">
          <p className="text-lead font-semibold">{text.noted}</p>
          <ul className="mt-1 max-w-measure list-disc pl-5">
            {batch.causes.map(({ id, what, noticedAt, at, person }) => (
              <li key={id}>
                {say(text.line, language, {
                  what,
                  noticed: formatDateTime(noticedAt, bakery),
                  at: formatDateTime(at, bakery),
                  who: person.name,
                })}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {batch.isOpen ? (
        <div className="print:hidden">
          <FloorFold title={text.title}>
            <p className="mb-4 max-w-measure">{text.note}</p>
            <ActionForm
              key={batch.causes.length}
              rules={rulesOf(noteCauseInput)}
              action={note.bind(null, batch.id)}
              idPrefix="cause-"
            >
              <div className="grid gap-4">
                <FloorField name="what" type="text" label={text.what} hint={text.whatHint} required />
                <div className="flex">
                  <FloorField name="noticedMinAgo" type="count" label={text.ago} defaultValue="0" required />
                </div>
                <div>
                  <FloorButton tone="plain">{text.keep}</FloorButton>
                </div>
              </div>
            </ActionForm>
          </FloorFold>
        </div>
      ) : null}
    </div>
  )
}
