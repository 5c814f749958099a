'use client'

import { Fragment, useActionState, useEffect, useMemo, useRef, useState, type ReactNode } from 'react'
import { ActionFormContext } from './action-form-context'
import { countOnce } from './count-once'
import { DraftNotice } from './draft-notice'
import type { FieldRules } from './field-rules'
import { FormSummary } from './form-summary'
import { emptyFormState, type FormAction, type FormState } from './form-state'
import { givenIn } from './given-in'
import { keepTyped } from './keep-typed'
import { useFocusAfter } from './use-focus-after'
import { useFormDraft } from './use-form-draft'

export type ActionFormProps = {
  action: FormAction
  /** What the command asks of each field, so that no field has to say it again. */
  rules?: FieldRules
  /** Prefix of the fields' ids, one for each form of a page. */
  idPrefix?: string
  /** Told what was put back from a draft, null for the form as the page gives it, where fields take their value from elsewhere. */
  onPutBack?: (values: Readonly<Record<string, string>> | null) => void
  children: ReactNode
}

const noRules: FieldRules = {}

/**
 * A form that a server action answers: every fault at its field and at the top, nothing typed lost, over an answer as over
 * a reload, and once however often it is sent.
 */
export function ActionForm({ action, rules = noRules, idPrefix = '', onPutBack, children }: ActionFormProps) {
  const form = useRef<HTMLFormElement>(null)
  const [formId] = useState<{ current: string | null }>(() => ({ current: null }))
  const [doneCount, setDoneCount] = useState(0)
  const given = useRef<Readonly<Record<string, string>> | null>(null)
  useEffect(() => {
    // Before a draft is put back over it, by the hook below.
    given.current = form.current && givenIn(form.current)
  }, [doneCount])
  useFocusAfter(form, doneCount)
  const draft = useFormDraft({ form, idPrefix, formId, given, doneCount, onPutBack })
  const counted = useMemo(() => countOnce(keepTyped(action), formId), [action, formId])

  async function send(former: FormState, sent: FormData): Promise<FormState> {
    try {
      const answer = await counted(former, sent)
      if (answer.done) {
        draft.drop()
        setDoneCount((count) => count + 1)
      }
      return answer.isStale ? { ...answer, given: given.current } : answer
    } catch (leading) {
      // Only what leads to another page comes here: it was done.
      draft.drop()
      throw leading
    }
  }

  const [state, dispatch, pending] = useActionState(send, emptyFormState)
  const typed = state.answers > 0 && !state.done ? state.values : draft.values
  const [labels] = useState(() => new Map<string, string>())
  const context = useMemo(
    () => ({ state, typed, pending, rules, idPrefix, labels }),
    [state, typed, pending, rules, idPrefix, labels],
  )
  const errors = useMemo(
    () =>
      Object.entries(state.problems).map(([name, text]) => {
        const fieldId = `${idPrefix}${name}`
        return { fieldId, label: labels.get(fieldId), text }
      }),
    [state, idPrefix, labels],
  )
  return (
    <ActionFormContext value={context}>
      <form
        ref={form}
        action={dispatch}
        noValidate
        // What stands in its fields is somebody's, though the fields take it for what they were given.
        data-begun={state.refusal !== null || draft.values !== null}
      >
        {state.refusal ? (
          <FormSummary title={state.refusal} errors={errors} />
        ) : (
          <DraftNotice
            backFrom={draft.at}
            offeredFrom={draft.offered?.at ?? null}
            onPutBack={draft.putBack}
            onStartAfresh={draft.startAfresh}
          />
        )}
        {/* React empties a form after its action; new fields with what was typed as their default keep it. */}
        <Fragment key={`${state.answers}.${draft.round}`}>{children}</Fragment>
      </form>
    </ActionFormContext>
  )
}
