import { rulesOf } from '@/lib/ui/rules-of'
import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getFormUnits } from '@/lib/kitchen/stores/get-form-units'
import { getIngredient } from '@/lib/kitchen/stores/get-ingredient'
import { changeIngredientInput } from '@/lib/kitchen/stores/change-ingredient.input'
import { ActionForm } from '@/lib/ui/action-form'
import { ActionRow } from '@/lib/ui/action-row'
import { FormCheck } from '@/lib/ui/form-check'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SubmitButton } from '@/lib/ui/submit-button'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { IngredientFields } from '../../ingredient-fields'
import { change } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).stores.ingredient.change }
}

export default async function ChangeIngredientPage({ params }: { params: Promise<{ ingredientId: string }> }) {
  const { ingredientId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { form: text, title } = words.stores
  const { locale } = await ask(getFormUnits)
  const { bakery } = await ask(getDesk)
  const ingredient = await ask(getIngredient, { ingredientId })
  const checkedAt = ingredient.allergensCheckedAt
  const asBefore = checkedAt
    ? [{ value: 'as-before', label: say(text.checks['as-before'], language, { day: formatDate(checkedAt, bakery) }) }]
    : []
  return (
    <Sheet
      kicker={title}
      headline={say(text.changeHeadline, language, { name: ingredient.name })}
      lead={text.changeLead}
    >
      <ActionForm
        rules={rulesOf(changeIngredientInput)}
        action={change.bind(null, ingredient.id, ingredient.revision, locale)}
      >
        <IngredientFields
          words={words}
          language={language}
          locale={locale}
          present={ingredient}
          checks={{
            options: [
              ...asBefore,
              { value: 'checked-now', label: text.checks['checked-now'] },
              { value: 'unknown', label: text.checks.unknown },
            ],
            first: checkedAt ? 'as-before' : 'unknown',
          }}
        >
          <Section id="use" title={text.use}>
            <FormCheck name="inUse" label={text.inUse} hint={text.inUseHint} defaultChecked={!ingredient.endedAt} />
          </Section>
        </IngredientFields>
        <ActionRow>
          <SubmitButton tone="go">{text.changeGo}</SubmitButton>
          <LinkButton tone="plain" href={`/stores/ingredients/${ingredient.id}`}>
            {text.back}
          </LinkButton>
        </ActionRow>
      </ActionForm>
    </Sheet>
  )
}
