import type { Words } from '@/lib/words/words'

const call = 'npm run -s calc -- <id>'

/** The margin of the reference: what it is made from, and how a calculation is called outside the app. */
export function aboutReference({ reference: text }: Words['calculators']) {
  return {
    label: text.about,
    entries: [
      { term: text.made, detail: text.madeText },
      {
        term: text.call,
        detail: (
          <>
            <code translate="no">{call}</code> {text.callText}
          </>
        ),
      },
    ],
  }
}
