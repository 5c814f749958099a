import { Button } from '@/lib/ui/button'
import { SelectField } from '@/lib/ui/select-field'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type CompareFormProps = {
  formulaId: string
  /** Newest first, two at least. */
  versions: readonly { id: string; number: number }[]
  text: Words['formulas']
  language: Language
}

/** Chooses two versions and goes to what differs between them: an address that can be kept and passed on. */
export function CompareForm({ formulaId, versions, text, language }: CompareFormProps) {
  const options = versions.map(({ id, number }) => ({ value: id, label: say(text.versionTitle, language, { number }) }))
  return (
    <form action={`/formulas/${formulaId}/compare`} method="get" className="flex flex-wrap items-end gap-x-8 gap-y-4">
      <div className="w-short">
        <SelectField
          name="from"
          label={text.history.compareOlder}
          options={options}
          defaultValue={versions[1]?.id}
          width="short"
        />
      </div>
      <div className="w-short">
        <SelectField
          name="to"
          label={text.history.compareNewer}
          options={options}
          defaultValue={versions[0]?.id}
          width="short"
        />
      </div>
      <Button tone="plain">{text.history.compareGo}</Button>
    </form>
  )
}
