import type { Looks } from '@/lib/kitchen/steps/looks.input'
import { FormField } from '@/lib/ui/form-field'
import { plainNumber } from '@/lib/words/format/plain-number'
import type { Words } from '@/lib/words/words'

const order = [
  'foldEveryMin',
  'restLookMin',
  'restMostMin',
  'retardLookMin',
  'retardMostMin',
  'coolLookMin',
  'coolMostMin',
] as const satisfies readonly (keyof Looks)[]

type LooksFieldsProps = { looks: Looks; locale: string; words: Words['people']['settings']['looks'] }

/** When somebody is called to look at a dough. */
export function LooksFields({ looks, locale, words }: LooksFieldsProps) {
  return (
    <>
      <h3 className="font-bold">{words.title}</h3>
      <p className="max-w-measure text-ink-2">{words.note}</p>
      {order.map((name) => (
        <FormField
          key={name}
          name={name}
          type="number"
          label={words[name]}
          unit="min"
          defaultValue={looks[name] === null ? '' : plainNumber(looks[name], { locale, grouped: false })}
          width="short"
        />
      ))}
    </>
  )
}
