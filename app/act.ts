import 'server-only'
import { refresh } from 'next/cache'
import { z } from 'zod'
import type { Command } from '@/lib/kitchen/command'
import type { OpenCommand } from '@/lib/kitchen/open-command'
import type { Refused } from '@/lib/kitchen/result'
import { formIdName, type FormState } from '@/lib/ui/form-state'
import { typedIn } from '@/lib/ui/typed-in'
import { textOf } from '@/lib/ui/text-of'
import type { Language } from '@/lib/words/words'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { currentCaller } from './caller'
import { currentLanguage } from './language'

type Acted<Value> =
  | { ok: true; value: Value; done(shown?: Record<string, string>): FormState }
  | { ok: false; state: FormState }

/**
 * Calls a command for a form: as whoever sends it, with the password typed in it where there is one, and turns a
 * refusal into words at the fields with everything typed kept, passwords apart.
 */
export async function act<Value>(
  command: Command<Value> | OpenCommand<Value>,
  input: unknown,
  form: FormData,
  former: FormState,
): Promise<Acted<Value>> {
  const answers = former.answers + 1
  const password = form.get('password')
  const caller = await currentCaller(typeof password === 'string' ? password : undefined)
  const result = await command.call({ ...caller, formId: z.uuid().safeParse(textOf(form, formIdName)).data }, input)
  if (!result.ok) {
    // Who reads cannot be looked up while the database is away.
    const language = result.refusal.code === 'away' ? (caller.browserLanguage ?? 'en') : await currentLanguage()
    return { ok: false, state: refusedState(result.refusal, language, form, answers) }
  }
  refresh()
  return {
    ok: true,
    value: result.value,
    done: (shown = {}) => ({
      answers,
      values: {},
      problems: {},
      refusal: null,
      isStale: false,
      given: null,
      done: shown,
    }),
  }
}

function refusedState(refusal: Refused, language: Language, form: FormData, answers: number): FormState {
  const { sentence, problems } = wordsOfRefusal(refusal, language)
  const isStale = refusal.code === 'stale' || refusal.code === 'stale-moved-on'
  // The page then shows how it stands now, and the same form can be sent again over that.
  if (isStale) refresh()
  return { answers, values: typedIn(form), problems, refusal: sentence, isStale, given: null, done: null }
}
