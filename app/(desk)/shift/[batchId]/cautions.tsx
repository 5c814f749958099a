import { CautionList } from '@/lib/ui/caution-list'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { BatchPart } from './batch-view'

/** What can hurt somebody at this batch. Allergens are never hidden, whatever else is coded. */
export function Cautions({ batch, words: { cautions: words }, language }: Omit<BatchPart, 'bakery'>) {
  const allergenNames = wordsIn(language).stores.allergens
  const ingredients = batch.lines.map(({ ingredient }) => ingredient)
  const allergens = [...new Set(ingredients.flatMap(({ allergens }) => allergens))].map(
    (allergen) => allergenNames[allergen],
  )
  const unchecked = ingredients.filter(({ allergensChecked }) => !allergensChecked).map(({ name }) => name)
  return (
    <CautionList
      title={words.title}
      lines={[
        ...(allergens.length > 0 ? [say(words.allergens, language, { list: allergens })] : []),
        ...(unchecked.length > 0 ? [say(words.unchecked, language, { list: unchecked })] : []),
        words.rawDough,
        ...(ingredients.some(({ dustCaution }) => dustCaution) ? [words.dust] : []),
        words.seed,
      ]}
    />
  )
}
