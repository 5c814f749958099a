import { Notice } from '@/lib/ui/notice'
import type { Words } from '@/lib/words/words'

type CautionsProps = {
  ingredient: { allergensCheckedAt: Date | null; dustCaution: boolean; isUsuallyDusty: boolean; isUnsafeRaw: boolean }
  text: Words['stores']['ingredient']
}

/** What can hurt somebody who handles the ingredient, before anything else about it. */
export function Cautions({ ingredient, text }: CautionsProps) {
  return (
    <>
      {ingredient.allergensCheckedAt ? null : (
        <Notice tone="warn" word={text.allergensUnchecked}>
          {text.allergensUncheckedText}
        </Notice>
      )}
      {ingredient.dustCaution ? (
        <Notice tone="warn" word={text.dust}>
          {text.dustText}
        </Notice>
      ) : ingredient.isUsuallyDusty ? (
        <Notice tone="warn" word={text.dustMissing}>
          {text.dustMissingText}
        </Notice>
      ) : null}
      {ingredient.isUnsafeRaw ? (
        <Notice tone="warn" word={text.raw}>
          {text.rawText}
        </Notice>
      ) : null}
    </>
  )
}
