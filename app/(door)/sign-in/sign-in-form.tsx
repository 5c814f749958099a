'use client'

import { signIn } from 'next-auth/react'
import { useState, type SubmitEvent } from 'react'
import { ActionRow } from '@/lib/ui/action-row'
import { Button } from '@/lib/ui/button'
import { Field } from '@/lib/ui/field'
import { ruleOf, type FieldRules } from '@/lib/ui/field-rules'
import { FieldStack } from '@/lib/ui/field-stack'
import { FormSummary } from '@/lib/ui/form-summary'

type SignInWords = {
  email: string
  password: string
  go: string
  working: string
  forgotten: string
  wrong: string
  away: string
}

const noFieldErrors: never[] = []

export function SignInForm({ words, rules }: { words: SignInWords; rules: FieldRules }) {
  const [refusal, setRefusal] = useState<string | null>(null)
  const [pending, setPending] = useState(false)

  async function send(form: FormData) {
    setPending(true)
    setRefusal(null)
    const answer = await signIn('credentials', {
      redirect: false,
      email: form.get('email'),
      password: form.get('password'),
    }).catch(() => undefined)
    // A whole new page, so that nothing of a former person's stays in the browser's memory.
    if (answer?.ok) {
      window.location.assign('/')
      return
    }
    setPending(false)
    setRefusal(answer?.status === 401 ? words.wrong : words.away)
  }

  function begin(event: SubmitEvent<HTMLFormElement>) {
    event.preventDefault()
    void send(new FormData(event.currentTarget))
  }

  return (
    <form onSubmit={begin} method="post">
      {refusal ? <FormSummary title={refusal} errors={noFieldErrors} /> : null}
      <FieldStack>
        <Field
          name="email"
          type="email"
          label={words.email}
          autoComplete="username"
          required
          maxLength={ruleOf(rules, 'email')?.mostLength}
        />
        <Field
          name="password"
          type="password"
          label={words.password}
          autoComplete="current-password"
          required
          maxLength={ruleOf(rules, 'password')?.mostLength}
        />
      </FieldStack>
      <ActionRow>
        <Button tone="go" disabled={pending}>
          {pending ? words.working : words.go}
        </Button>
      </ActionRow>
      <p className="mt-4 text-small text-ink-2">{words.forgotten}</p>
    </form>
  )
}
