'use server'

import { act } from '@/app/act'
import { currentCaller } from '@/app/caller'
import { currentLanguage } from '@/app/language'
import { importReadings } from '@/lib/kitchen/readings/import/import-readings'
import { previewImport } from '@/lib/kitchen/readings/import/preview-import'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import { emptyFormState } from '@/lib/ui/form-state'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { ImportState } from './import-state'
import { readImportForm } from './read-import-form'
import { saySeen } from './say-seen'

/** Looks at a file, or stores what it brings: which of the two, the pressed button says. */
export async function send(trialId: string, former: { answers: number }, form: FormData): Promise<ImportState> {
  const language = await currentLanguage()
  const { importing: text } = wordsIn(language)
  const { look, match, matched } = await readImportForm(form, text.pasted)
  const state: ImportState = { answers: former.answers + 1, refusal: null, problems: {}, seen: null, done: null }

  if (form.get('intent') === 'store') {
    const acted = await act(importReadings, { trialId, ...look, match }, form, emptyFormState)
    if (acted.ok) {
      const { stored, already, measured } = acted.value
      const sentences = [
        stored > 0 ? say(text.done, language, { count: stored }) : measured > 0 ? null : text.doneNothing,
        stored > 0 && already > 0 ? say(text.doneAlready, language, { count: already }) : null,
        measured > 0 ? say(text.doneMeasured, language, { count: measured }) : null,
      ]
      return { ...state, done: paragraph(sentences, language) }
    }
    state.refusal = acted.state.refusal
    state.problems = acted.state.problems
  }
  const looked = await previewImport.call(await currentCaller(), {
    trialId,
    look: { ...look, match: matched === '' ? null : match, matched },
  })
  if (!looked.ok) {
    const { sentence, problems } = wordsOfRefusal(looked.refusal, language)
    return {
      ...state,
      refusal: sentence,
      problems: Object.fromEntries(
        Object.entries(problems).map(([path, words]) => [path.replace(/^look\./, ''), words]),
      ),
    }
  }
  return { ...state, ...saySeen(looked.value, state, language) }
}
