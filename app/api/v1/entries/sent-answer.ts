import type { RefusalCode } from '@/lib/kitchen/messages'

/** What the book answers for one reading or correction of a request. */
export type SentAnswer =
  | {
      outcome: 'kept'
      id: string
      hash: string
      isAgain: boolean
      outOfRange: boolean
      needs: 'repeat' | 'third' | null
    }
  | { outcome: 'aside'; id: string; hash: string; refusal: RefusalCode; words: string }
  | { outcome: 'refused'; id: string | null; refusal: RefusalCode; words: string; problems: Record<string, string> }

/** The whole of an answer; of a request that was refused as a whole, why, in words where it is about who sent it. */
export type SentAnswers = { entries: SentAnswer[] } | { refusal: string; words?: string }
