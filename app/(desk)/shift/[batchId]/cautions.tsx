import { CautionList } from '@/lib/ui/caution-list'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { BatchPart } from './batch-view'

/** What can hurt somebody at this batch. Allergens are never hidden, whatever else is coded. */
export function Cautions({ batch, words: { cautions: words }, language }: Omit<BatchPart, 'bakery'>) {
  const allergenNames = wordsIn(language).stores.allergens
  const { unchecked, isDusty } = batch.cautions
  const allergens = batch.cautions.allergens.map((allergen) => allergenNames[allergen])
  return (
    <CautionList
      title={words.title}
      lines={[
        ...(allergens.length > 0 ? [say(words.allergens, language, { list: allergens })] : []),
        ...(unchecked.count === 0
          ? []
          : unchecked.names
            ? [say(words.unchecked, language, { list: unchecked.names })]
            : [say(words.uncheckedCount, language, { count: unchecked.count })]),
        words.rawDough,
        ...(isDusty ? [words.dust] : []),
        words.seed,
      ]}
    />
  )
}
