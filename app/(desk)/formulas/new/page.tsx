import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { rulesOf } from '@/lib/ui/rules-of'
import { draftFormulaInput } from '@/lib/kitchen/formulas/draft-formula.input'
import { getEditor } from '@/lib/kitchen/formulas/get-editor'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Sheet } from '@/lib/ui/sheet'
import { wordsIn } from '@/lib/words/words'
import { blankLine } from '../editor-state'
import { FormulaEditor } from '../formula-editor'
import { ownUnits } from '@/lib/words/format/own-units'
import { draft } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).formulas.editor.newTitle }
}

const empty = {
  pieces: '',
  scalingMassG: '',
  doughLossPct: '',
  doughTempC: '',
  mixTimeMin: '',
  bulkTimeMin: '',
  proofTimeMin: '',
  bakeTempC: '',
  bakeTimeMin: '',
  method: '',
  reason: '',
}

export default async function NewFormulaPage() {
  const language = await currentLanguage()
  const { formulas: text } = wordsIn(language)
  const { bakery } = await ask(getDesk)
  const { hasIngredients } = await ask(getEditor, { draft: null })
  const units = ownUnits(bakery)
  if (!hasIngredients) {
    return (
      <Sheet kicker={text.list.title} headline={text.editor.newHeadline}>
        <div className="mt-6">
          <EmptyState sentence={text.editor.noIngredients}>
            <LinkButton tone="go" href="/stores">
              {text.editor.toStores}
            </LinkButton>
          </EmptyState>
        </div>
      </Sheet>
    )
  }
  return (
    <FormulaEditor
      rules={rulesOf(draftFormulaInput)}
      action={draft.bind(null, units)}
      kicker={text.list.title}
      headline={text.editor.newHeadline}
      hasName
      values={{
        ...empty,
        stages: [{ kind: 'final_dough', name: '', lines: [blankLine, blankLine, blankLine, blankLine] }],
      }}
      ingredients={[]}
      text={text}
      units={units}
      language={language}
      cancelHref="/formulas"
    />
  )
}
