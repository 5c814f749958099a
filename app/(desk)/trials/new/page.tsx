import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getTrial } from '@/lib/kitchen/trials/get-trial'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Sheet } from '@/lib/ui/sheet'
import { wordsIn } from '@/lib/words/words'
import { TrialForm } from '../trial-form'
import { draft } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).trials.form.titleNew }
}

export default async function NewTrialPage() {
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { form } = words.trials
  const { bakery } = await ask(getDesk)
  const choices = await ask(getTrial, { trialId: null })
  const units = { locale: bakery.locale, massUnits: bakery.massUnits, temperatureUnits: bakery.temperatureUnits }
  return (
    <Sheet kicker={form.titleNew} headline={form.headlineNew} lead={form.lead}>
      {choices.formulas.length === 0 ? (
        <div className="mt-6">
          <EmptyState sentence={form.noFormula}>
            <LinkButton tone="plain" href="/formulas">
              {form.toFormulas}
            </LinkButton>
          </EmptyState>
        </div>
      ) : (
        <TrialForm
          action={draft.bind(null, units)}
          present={null}
          choices={choices}
          units={units}
          words={words}
          language={language}
          backHref="/trials"
        />
      )}
    </Sheet>
  )
}
