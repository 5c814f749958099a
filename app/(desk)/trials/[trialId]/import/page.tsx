import type { Metadata } from 'next'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { importReadingsInput, mostImported } from '@/lib/kitchen/readings/import/import-readings.input'
import { previewImport } from '@/lib/kitchen/readings/import/preview-import'
import { ActionRow } from '@/lib/ui/action-row'
import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { rulesOf } from '@/lib/ui/rules-of'
import { Sheet } from '@/lib/ui/sheet'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { send } from './actions'
import { ImportDesk } from './import-desk'
import { armName, keyOfUse } from './say-seen'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).importing.title }
}

export default async function ImportPage({ params }: { params: Promise<{ trialId: string }> }) {
  const { trialId } = await params
  const language = await currentLanguage()
  const words = wordsIn(language)
  const { importing: text, problems, desk } = words
  const { trial, measures, today } = await ask(previewImport, { trialId, look: null })
  const plainUses = (
    [
      'nothing',
      'code',
      'day',
      'arm',
      ...(trial.hasSeveralDoughs ? (['dough'] as const) : []),
      'piece',
      'time',
      'good',
    ] as const
  ).map((as) => ({ value: as, label: text.uses[as] }))
  const level =
    trial.factorName === null
      ? []
      : [{ value: 'level', label: say(text.uses.level, language, { factor: trial.factorName }) }]
  const ofMeasures = measures.flatMap((measure) =>
    measure.units.map((unit) => ({
      value: keyOfUse({ as: 'measure', measureId: measure.id, unit }),
      label: say(text.useMeasure, language, { measure: measureName(measure, words), unit }),
    })),
  )
  const links = (
    <>
      <LinkButton tone="plain" href={`/trials/${trial.id}`}>
        {text.toPlan}
      </LinkButton>
      <LinkButton tone="plain" href={`/trials/${trial.id}/result`}>
        {text.toResult}
      </LinkButton>
      <LinkButton tone="plain" href="/shift">
        {text.toShift}
      </LinkButton>
    </>
  )
  return (
    <Sheet
      kicker={say(text.kicker, language, { number: trial.number })}
      headline={text.headline}
      lead={trial.isOpen ? text.lead : trial.question}
    >
      {trial.isOpen ? (
        <ImportDesk
          action={send.bind(null, trial.id)}
          uses={[...plainUses, ...level, ...ofMeasures]}
          arms={trial.arms.map((arm) => ({ value: String(arm.position), label: armName(arm, language) }))}
          today={today}
          mostBytes={mostImported.bytes}
          rules={rulesOf(importReadingsInput)}
          tooLarge={problems['file-too-large']}
          text={text}
          optionalWord={desk.optional}
          language={language}
          links={links}
        />
      ) : (
        <>
          <Notice tone="plain" word={text.notOpenWord}>
            {text.notOpenText}
          </Notice>
          <ActionRow>{links}</ActionRow>
        </>
      )}
    </Sheet>
  )
}
