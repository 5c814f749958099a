import { Button } from '@/lib/ui/button'
import { Field } from '@/lib/ui/field'
import type { Words } from '@/lib/words/words'

/** Looks for a calculation by any words; the address keeps what was looked for. */
export function FindForm({ find, text }: { find: string; text: Words['calculators']['list'] }) {
  return (
    <form action="/calculators" method="get" role="search" className="mt-6 flex flex-wrap items-end gap-4 print:hidden">
      <div className="w-full max-w-medium">
        <Field name="find" type="text" label={text.find} defaultValue={find} width="medium" autoComplete="off" />
      </div>
      <Button tone="plain">{text.findGo}</Button>
    </form>
  )
}
