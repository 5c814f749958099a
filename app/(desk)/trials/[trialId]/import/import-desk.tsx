'use client'

import { startTransition, useActionState, useEffect, useMemo, useState, type ReactNode } from 'react'
import { ActionRow } from '@/lib/ui/action-row'
import { Lines } from '@/lib/ui/lines'
import { Button } from '@/lib/ui/button'
import { FormSummary } from '@/lib/ui/form-summary'
import { DraftNotice } from '@/lib/ui/draft-notice'
import type { KeptDraft } from '@/lib/ui/kept-drafts'
import { Notice } from '@/lib/ui/notice'
import { typedIn } from '@/lib/ui/typed-in'
import { useKeptTyped } from '@/lib/ui/use-kept-typed'
import type { FieldRules } from '@/lib/ui/field-rules'
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
  rules: FieldRules
  tooLarge: string
  text: Words['importing']
  optionalWord: string
  language: string
  links: ReactNode
}

/**
 * The three steps of bringing in a file, on one page: the file, what its columns say, what would be stored. The form
 * is not emptied between them, so the chosen file stays, and goes to the server anew each time. What is typed and chosen
 * is kept in this browser until it is stored; a file has to be chosen again.
 */
export function ImportDesk({ action, links, ...props }: ImportDeskProps) {
  const { text, mostBytes, tooLarge } = props
  const answered = useMemo(() => keepChosen(action), [action])
  const [state, dispatch, pending] = useActionState(answered, emptyImportState)
  const [changedAt, setChangedAt] = useState<number | null>(null)
  const [largeAt, setLargeAt] = useState<'file' | 'text' | null>(null)
  const isChanged = changedAt === state.answers
  const [back, setBack] = useState<KeptDraft | null>(null)
  const kept = useKeptTyped('import', setBack)
  const isDone = state.done !== null
  useEffect(() => {
    if (isDone) kept.drop()
  }, [isDone, kept])

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
      onChange={(event) => {
        setChangedAt(state.answers)
        kept.keep(typedIn(new FormData(event.currentTarget)), '')
      }}
      onSubmit={(event) => {
        event.preventDefault()
        submit(event.currentTarget, event.nativeEvent.submitter)
      }}
    >
      {state.refusal ? (
        <FormSummary title={state.refusal} errors={whole.map(([path, words]) => ({ fieldId: path, text: words }))} />
      ) : null}
      {state.answers === 0 ? (
        <DraftNotice
          backFrom={back?.at ?? null}
          offeredFrom={null}
          onPutBack={() => undefined}
          onStartAfresh={() => {
            kept.drop()
            setBack(null)
          }}
        />
      ) : null}
      <FileSection key={back?.at} {...props} typed={back?.values ?? null} problems={problems} />
      {seen ? (
        <MatchSection
          key={seen.matched}
          {...props}
          seen={seen}
          keepOdd={back?.values.keepOdd !== undefined}
          problems={problems}
        />
      ) : (
        // What had been chosen for the columns holds for the same file.
        Object.entries(back?.values ?? {})
          .filter(([name]) => ofMatch.test(name))
          .map(([name, value]) => <input key={name} type="hidden" name={name} value={value} />)
      )}
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

/** The fields of the second step. */
const ofMatch = /^(matched|separator|decimal|keepOdd|columns\.\d+|armTexts\.\d+|arms\.\d+)$/

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
