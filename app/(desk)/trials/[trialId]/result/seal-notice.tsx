import { Notice } from '@/lib/ui/notice'
import { paragraph } from '@/lib/words/paragraph'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownResult } from './shown-result'

type Sealed = ShownResult['sealed']
type Text = ResultForms['text']['seal']

/** Says so where the book is not what was closed, with the first thing that differs. Nothing where it is. */
export function SealNotice({ sealed, text, language }: { sealed: Sealed; text: Text; language: string }) {
  const sentences = sentencesOf(sealed, text, language)
  if (sentences.length === 0) return null
  return (
    <Notice
      tone={sealed.outcome === 'unsealed' ? 'warn' : 'stop'}
      word={sealed.outcome === 'unsealed' ? text.unsealedWord : text.word}
    >
      {paragraph(sentences, language)}
    </Notice>
  )
}

function sentencesOf(sealed: Sealed, text: Text, language: string): string[] {
  switch (sealed.outcome) {
    case 'open':
    case 'agrees':
      return []
    case 'unsealed':
      return [text.unsealed]
    case 'differs':
      return [text.whole, firstOf(sealed.first, text, language), text.todo]
    case 'damaged':
      return [text.damaged, text.todo]
    case 'unknown-format':
      return [text.unknownFormat]
    default:
      return sealed satisfies never
  }
}

function firstOf(first: Extract<Sealed, { outcome: 'differs' }>['first'], text: Text, language: string): string {
  if (first === null) return text.elsewhere
  switch (first.kind) {
    case 'dough':
      return say(text.dough[first.field], language, { code: first.code })
    case 'reading-changed':
      return say(text.changed, language, { code: first.code, was: first.was ?? '', is: first.is ?? '' })
    case 'reading-gone':
      return say(text.gone, language, { code: first.code, was: first.was ?? '' })
    case 'reading-added':
      return say(text.added, language, { code: first.code, is: first.is ?? '' })
    case 'found':
      return say(text.found, language, { code: first.code })
    case 'weighing-changed':
    case 'weighing-gone':
    case 'weighing-added':
      return say(text.weighing[first.kind], language, { code: first.code, ingredient: first.ingredient })
    default:
      return first satisfies never
  }
}
