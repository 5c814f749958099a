import { ErrorSheet } from '@/lib/ui/error-sheet'
import { LinkButton } from '@/lib/ui/link-button'
import { wordsIn } from '@/lib/words/words'
import { currentLanguage } from './language'

export default async function NotFound() {
  const { desk } = wordsIn(await currentLanguage())
  const { errors: text } = desk
  return (
    <ErrorSheet
      productName={desk.product}
      headline={text.notFound}
      happened={text.notFoundWhy}
      todo={text.notFoundTodo}
    >
      <LinkButton tone="plain" href="/">
        {text.home}
      </LinkButton>
    </ErrorSheet>
  )
}
