'use client'

import { startTransition, useActionState, useMemo, useState, type ReactNode } from 'react'
import { ActionRow } from '@/lib/ui/action-row'
import { Lines } from '@/lib/ui/lines'
import { Button } from '@/lib/ui/button'
import { FormSummary } from '@/lib/ui/form-summary'
import { Notice } from '@/lib/ui/notice'
import { wordsOfNoAnswer } from '@/lib/ui/words-of-no-answer'
import type { Words } from '@/lib/words/words'
import { FaultsSection } from './faults-section'
import { FileSection } from './file-section'
import { emptyImportState, type ImportState } from './import-state'
import { MatchSection } from './match-section'
import { PreviewSection } from './preview-section'
import { tooLargeAt } from './too-large-at'

export type ImportDeskProps = {
  action(former: ImportState, form: FormData): Promise<ImportState>
  uses: readonly { value: string; label: string }[]
  arms: readonly { value: string; label: string }[]
  today: string
  mostBytes: number
  tooLarge: string
  text: Words['importing']
  optionalWord: string
  language: string
  links: ReactNode
}

/**
 * The three steps of bringing in a file, on one page: the file, what its columns say, what would be stored. The form
 * is not emptied between them, so the chosen file stays, and goes to the server anew each time.
 */
export function ImportDesk({ action, links, ...props }: ImportDeskProps) {
  const { text, mostBytes, tooLarge } = props
  const answered = useMemo(() => keepChosen(action), [action])
  const [state, dispatch, pending] = useActionState(answered, emptyImportState)
  const [changedAt, setChangedAt] = useState<number | null>(null)
  const [largeAt, setLargeAt] = useState<'file' | 'text' | null>(null)
  const isChanged = changedAt === state.answers

  function submit(target: HTMLFormElement, submitter: HTMLElement | null): void {
    const form = new FormData(target, submitter)
    const at = tooLargeAt(form, mostBytes)
    setLargeAt(at)
    if (at === null) startTransition(() => dispatch(form))
  }

  if (state.done !== null) {
    return (
      <>
        <Notice tone="ok" word={text.doneWord}>
          {state.done}
        </Notice>
        <ActionRow>{links}</ActionRow>
      </>
    )
  }
  const problems = largeAt === null ? state.problems : { ...state.problems, [largeAt]: tooLarge }
  const { seen } = state
  const isReady = seen?.rows?.isReady === true && !isChanged
  const whole = Object.entries(problems).filter(([path]) => path === 'columns')
  return (
    <form
      noValidate
      onChange={() => setChangedAt(state.answers)}
      onSubmit={(event) => {
        event.preventDefault()
        submit(event.currentTarget, event.nativeEvent.submitter)
      }}
    >
      {state.refusal ? (
        <FormSummary title={state.refusal} errors={whole.map(([path, words]) => ({ fieldId: path, text: words }))} />
      ) : null}
      <FileSection {...props} problems={problems} />
      {seen ? <MatchSection key={seen.matched} {...props} seen={seen} problems={problems} /> : null}
      {seen?.rows?.faultTitle ? (
        <FaultsSection title={seen.rows.faultTitle} rows={seen.rows} text={text} />
      ) : seen ? (
        <PreviewSection rows={seen.rows} text={text} />
      ) : null}
      <p role="status" className="sr-only">
        {isChanged ? null : (seen?.rows?.faultTitle ?? <Lines texts={seen?.rows?.sentences ?? []} />)}
      </p>
      {seen && isChanged ? <p className="mt-5 font-semibold">{text.changedSince}</p> : null}
      <ActionRow>
        {isReady ? (
          <Button tone="go" name="intent" value="store" disabled={pending}>
            {seen.rows?.storeLabel}
          </Button>
        ) : null}
        <Button tone={isReady ? 'plain' : 'go'} name="intent" value="look" disabled={pending}>
          {seen ? text.lookAgain : text.look}
        </Button>
        {links}
      </ActionRow>
    </form>
  )
}

/** An action that does not answer leaves the file, and what was chosen for its columns, as they are. */
function keepChosen(action: ImportDeskProps['action']): ImportDeskProps['action'] {
  return async (former, form) => {
    try {
      return await action(former, form)
    } catch (error) {
      return { ...former, answers: former.answers + 1, refusal: wordsOfNoAnswer(error) }
    }
  }
}
