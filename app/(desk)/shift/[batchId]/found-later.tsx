import { foundObject } from '@/lib/kitchen/conduct/found-object.input'
import { noteFoundCauseInput } from '@/lib/kitchen/shifts/note-found-cause.input'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { FloorFold } from '@/lib/ui/floor-fold'
import { FloorField } from '@/lib/ui/floor-field'
import { rulesOf } from '@/lib/ui/rules-of'
import { formatDateTime } from '@/lib/words/format/date'
import { say, sayName } from '@/lib/words/say'
import { noteFound, signFound } from './actions'
import type { BatchPart } from './batch-view'

/** What was found later of the batch, for a second person to sign, and two taps to write down something that shows it. */
export function FoundLater({ batch, bakery, words: { found: text }, language }: BatchPart) {
  if (!batch.mayBeFoundOut && batch.found.length === 0) return null
  return (
    <div>
      {batch.found.length > 0 ? (
        <div className="border-b-2 border-rule py-4">
          <p className="text-lead font-semibold">{text.noted}</p>
          <ul className="mt-1 max-w-measure">
            {batch.found.map(({ id, object, what, at, who, signed, maySignAs }) => (
              <li key={id} className="mt-2">
                <p>
                  {say(text.line, language, {
                    what,
                    object: sayName(text.objects[object], language),
                    at: formatDateTime(at, bakery),
                    who,
                  })}
                </p>
                {signed ? (
                  <p>{say(signed.isAlone ? text.alone : text.signed, language, { who: signed.who })}</p>
                ) : batch.mayBeFoundOut ? (
                  <p className="text-ink-2">{text.waits}</p>
                ) : null}
                {maySignAs && batch.mayBeFoundOut ? (
                  <div className="mt-2 print:hidden">
                    <ActionForm action={signFound.bind(null, id, batch.revision)} idPrefix={`sign-${id}-`}>
                      <div className="flex flex-wrap items-center gap-4">
                        <FloorButton tone="stop">{maySignAs === 'alone' ? text.signAlone : text.sign}</FloorButton>
                        <span className="text-ink-2">{text.signNote}</span>
                      </div>
                    </ActionForm>
                  </div>
                ) : null}
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      {batch.mayBeFoundOut ? (
        <div className="print:hidden">
          <FloorFold title={text.title}>
            <p className="max-w-measure">{text.note}</p>
            <p className="mb-4 max-w-measure font-semibold">{text.caution}</p>
            <ActionForm
              key={batch.found.length}
              rules={rulesOf(noteFoundCauseInput)}
              action={noteFound.bind(null, batch.id)}
              idPrefix="found-"
            >
              <FloorField name="what" type="text" label={text.what} hint={text.whatHint} required />
              <p className="mt-4 font-semibold">{text.by}</p>
              <div className="mt-2 flex flex-wrap gap-4">
                {foundObject.options.map((object) => (
                  <FloorButton key={object} tone="plain" name="object" value={object}>
                    {text.objectButtons[object]}
                  </FloorButton>
                ))}
              </div>
            </ActionForm>
          </FloorFold>
        </div>
      ) : null}
    </div>
  )
}
