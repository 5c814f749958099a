import type { LostDough } from '@/lib/kitchen/repairs/losses-of-trial'
import { ActionForm } from '@/lib/ui/action-form'
import { FloorButton } from '@/lib/ui/floor-button'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { again } from './[batchId]/actions'
import { sayLoss } from './say-loss'

type BakeAgainProps = {
  dough: Pick<LostDough, 'id' | 'code' | 'state' | 'when'>
  locale: string
  words: Words['shift']
  language: Language
}

/** That a batch is out, and the button by which it is baked again; of what it is not a word. */
export function BakeAgain({ dough, locale, words, language }: BakeAgainProps) {
  return (
    <div className="my-3">
      <ActionForm action={again.bind(null, dough.id)} idPrefix={`again-${dough.code}-`}>
        <div className="flex flex-wrap items-center gap-x-6 gap-y-2">
          <p className="text-lead font-semibold">{sayLoss(dough, locale, words, language)}</p>
          <div className="print:hidden">
            <FloorButton tone="plain" fullLabel={say(words.repair.goFull[dough.state], language, { code: dough.code })}>
              {words.repair.go[dough.state]}
            </FloorButton>
          </div>
        </div>
      </ActionForm>
    </div>
  )
}
