import type { RefusalCode } from '@/lib/kitchen/messages'

/** What the book answers for one entry of a request. */
export type SentReading =
  | { ok: true; id: string; hash: string; isAgain: boolean; outOfRange: boolean; needs: 'repeat' | 'third' | null }
  | { ok: false; id: string | null; refusal: RefusalCode; words: string; problems: Record<string, string> }
