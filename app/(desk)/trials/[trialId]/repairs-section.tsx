import { again } from '@/app/(desk)/shift/[batchId]/actions'
import { sayLoss } from '@/app/(desk)/shift/say-loss'
import { sayRepair } from '@/app/(desk)/say-repair'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { AnswerOf } from '@/lib/kitchen/query'
import type { getRepairs } from '@/lib/kitchen/repairs/get-repairs'
import type { FormState } from '@/lib/ui/form-state'
import { ActionForm } from '@/lib/ui/action-form'
import { Section } from '@/lib/ui/section'
import { SubmitButton } from '@/lib/ui/submit-button'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { addWholeDay } from './actions'

type RepairsSectionProps = {
  trialId: string
  repairs: AnswerOf<typeof getRepairs>
  mayDate: boolean
  bakery: AnswerOf<typeof getDesk>['bakery']
  words: Words
  language: Language
}

/** What was lost and can still be put right within what was approved, and what was. */
export function RepairsSection({ trialId, repairs, mayDate, bakery, words, language }: RepairsSectionProps) {
  const { repairs: text } = words.trials.plan
  const { toBakeAgain, shortDays, mayBakeAgain, mayAddDay } = repairs
  if (repairs.repairs.length === 0 && toBakeAgain.length === 0 && shortDays.length === 0) return null
  const isAnythingLeft = toBakeAgain.length > 0 || shortDays.length > 0
  return (
    <Section id="repairs" title={text.title} note={isAnythingLeft ? text.note : undefined}>
      {repairs.repairs.length === 0 ? null : (
        <ul className="max-w-measure list-disc pl-5">
          {repairs.repairs.map((repair) => (
            <li key={repair.id} className="py-0.5">
              {sayRepair(repair, bakery, words.results.repairs, language)}
            </li>
          ))}
        </ul>
      )}
      {toBakeAgain.map((dough) => (
        <Repair
          key={dough.id}
          action={mayBakeAgain ? again.bind(null, dough.id) : null}
          idPrefix={`again-${dough.code}-`}
          sentence={sayLoss(dough, bakery.locale, words.shift, language)}
          go={words.shift.repair.go[dough.state]}
          fullLabel={say(words.shift.repair.goFull[dough.state], language, { code: dough.code })}
        />
      ))}
      {shortDays.map(({ number, short }) => (
        <Repair
          key={number}
          action={mayAddDay ? addWholeDay.bind(null, trialId, number) : null}
          idPrefix={`add-day-${number}-`}
          sentence={say(text.short, language, { day: number, count: short })}
          go={text.addDay}
          fullLabel={say(text.addDayFull, language, { day: number })}
        />
      ))}
      {isAnythingLeft && mayDate ? (
        <p className="mt-2 max-w-measure">
          <a href="#dates">{text.toDates}</a>
        </p>
      ) : null}
    </Section>
  )
}

type RepairProps = {
  /** Null for whoever may not do it. */
  action: ((former: FormState, form: FormData) => Promise<FormState>) | null
  idPrefix: string
  sentence: string
  go: string
  fullLabel: string
}

function Repair({ action, idPrefix, sentence, go, fullLabel }: RepairProps) {
  return (
    <div className="mt-3">
      {action === null ? (
        <p className="max-w-measure">{sentence}</p>
      ) : (
        <ActionForm action={action} idPrefix={idPrefix}>
          <div className="flex flex-wrap items-baseline gap-x-5 gap-y-2">
            <p className="max-w-measure">{sentence}</p>
            <SubmitButton tone="plain" fullLabel={fullLabel}>
              {go}
            </SubmitButton>
          </div>
        </ActionForm>
      )}
    </div>
  )
}
