import { LinkButton } from '@/lib/ui/link-button'
import { Notice } from '@/lib/ui/notice'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { ResultForms } from './result-forms'
import type { ShownResult } from './shown-result'

/** That something is missing which can still be made up for, before somebody closes the readings over it. */
export function ToRepair({ result, forms }: { result: ShownResult; forms: ResultForms }) {
  const { text, language } = forms
  if (result.shortDays === 0) return null
  return (
    <>
      <Notice tone="warn" word={wordsIn(language).desk.attention}>
        {say(text.toRepair, language, { count: result.shortDays })}
      </Notice>
      <div className="print:hidden">
        <LinkButton tone="plain" href={`/trials/${result.trial.id}#repairs`}>
          {text.toRepairGo}
        </LinkButton>
      </div>
    </>
  )
}
