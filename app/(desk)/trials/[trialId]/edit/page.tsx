import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { getTrial } from '@/lib/kitchen/trials/get-trial'
import { Sheet } from '@/lib/ui/sheet'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { TrialForm } from '../../trial-form'
import { changeDraft } from './actions'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).trials.plan.change }
}

export default async function EditTrialPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { form } = words.trials
  const { bakery } = await ask(getDesk)
  const { trial, ...choices } = await ask(getTrial, { trialId })
  if (!trial || trial.state !== 'draft') redirect(`/trials/${trialId}`)
  const units = { locale: bakery.locale, massUnits: bakery.massUnits, temperatureUnits: bakery.temperatureUnits }
  return (
    <Sheet
      kicker={words.trials.title}
      headline={say(form.headline, language, { number: trial.number })}
      lead={form.lead}
    >
      <TrialForm
        action={changeDraft.bind(null, trial.id, trial.revision, units)}
        present={trial.content}
        choices={choices}
        units={units}
        words={words}
        language={language}
        backHref={`/trials/${trial.id}`}
      />
    </Sheet>
  )
}
