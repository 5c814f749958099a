import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { rulesOf } from '@/lib/ui/rules-of'
import { changeDraftInput } from '@/lib/kitchen/formulas/change-draft.input'
import { getEditor } from '@/lib/kitchen/formulas/get-editor'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { editorValues } from '../../../../editor-values'
import { ownUnits } from '@/lib/words/format/own-units'
import { FormulaEditor } from '../../../../formula-editor'
import { change } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.sheet.change }
}

export default async function EditPage({ params }: { params: Promise<{ formulaId: string; versionId: string }> }) {
  const { formulaId, versionId } = await params
  const language = await currentLanguage()
  const { formulas: text } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { ingredients, draft } = await ask(getEditor, { draft: { formulaId, versionId } })
  if (!draft) notFound()
  const units = ownUnits(bakery)
  return (
    <FormulaEditor
      rules={rulesOf(changeDraftInput)}
      action={change.bind(null, { versionId, seenRevision: draft.revision, units })}
      kicker={draft.content.formula.name}
      headline={say(text.editor.changeHeadline, language, { number: draft.content.version.number })}
      hasName={false}
      values={editorValues(draft.content, units)}
      ingredients={ingredients}
      text={text}
      units={units}
      language={language}
      cancelHref={`/formulas/${formulaId}/versions/${versionId}`}
    />
  )
}
