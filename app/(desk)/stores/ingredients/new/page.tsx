import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getFormUnits } from '@/lib/kitchen/stores/get-form-units'
import { addIngredientInput } from '@/lib/kitchen/stores/add-ingredient.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Sheet } from '@/lib/ui/sheet'
import { SubmitButton } from '@/lib/ui/submit-button'
import { wordsIn } from '@/lib/words/words'
import { IngredientFields } from '../ingredient-fields'
import { add } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.form.newTitle }
}

export default async function NewIngredientPage() {
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { form: text, title } = words.stores
  const { locale } = await ask(getFormUnits)
  return (
    <Sheet kicker={title} headline={text.newHeadline} lead={text.newLead}>
      <ActionForm rules={rulesOf(addIngredientInput)} action={add.bind(null, locale)}>
        <IngredientFields
          words={words}
          language={language}
          locale={locale}
          checks={{
            options: [
              { value: 'unknown', label: text.checks.unknown },
              { value: 'checked-now', label: text.checks['checked-now'] },
            ],
            first: 'unknown',
          }}
        />
        <ActionRow>
          <SubmitButton tone="go">{text.addGo}</SubmitButton>
          <LinkButton tone="plain" href="/stores">
            {text.back}
          </LinkButton>
        </ActionRow>
      </ActionForm>
    </Sheet>
  )
}
