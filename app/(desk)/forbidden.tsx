import { currentLanguage } from '@/app/language'
import { ErrorSheet } from '@/lib/ui/error-sheet'
import { wordsIn } from '@/lib/words/words'

export default async function DeskForbidden() {
  const { errors: text } = wordsIn(await currentLanguage()).desk
  return <ErrorSheet headline={text.notAllowed} happened={text.notAllowedWhy} todo={text.notAllowedTodo} />
}
