import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { anchorText } from '@/lib/words/format/anchor-text'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'

/** In the foot of a print: where the record stood. Paper shows later that nothing before it was written anew. */
export async function PrintAnchor() {
  const [language, { bakery, record }] = await Promise.all([currentLanguage(), ask(getDesk)])
  const { audit } = wordsIn(language)
  return (
    <p className="mt-6 hidden border-t border-rule pt-2 text-small print:block">
      {say(audit.anchor.foot, language, {
        number: record.number,
        hash: anchorText(record.hash),
        date: formatDateTime(new Date(), bakery),
      })}
    </p>
  )
}
