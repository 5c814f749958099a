import { useEffect, useState } from 'react'
import { tablet } from '../keep/tablet'

/** What is half typed, kept at every change and there again after a reload; null until the tablet has been asked. */
export function useDraft(draft: string) {
  const [text, setText] = useState<string | null>(null)
  const [isLost, setLost] = useState(false)
  useEffect(() => {
    let isOver = false
    void tablet.drafts.get(draft).then((kept) => {
      if (!isOver) setText((typed) => typed ?? kept?.text ?? '')
    })
    return () => {
      isOver = true
    }
  }, [draft])
  const type = (next: string) => {
    setText(next)
    tablet.drafts.put({ place: draft, text: next }).then(
      () => setLost(false),
      () => setLost(true),
    )
  }
  return { text, type, isLost }
}
