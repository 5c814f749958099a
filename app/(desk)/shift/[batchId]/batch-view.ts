import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { AnswerOf } from '@/lib/kitchen/query'
import type { getBatch } from '@/lib/kitchen/shifts/get-batch'
import type { Language, Words } from '@/lib/words/words'

export type BatchShown = AnswerOf<typeof getBatch>
export type BakeryShown = AnswerOf<typeof getDesk>['bakery']

/** What each part of the batch page is given. */
export type BatchPart = { batch: BatchShown; bakery: BakeryShown; words: Words['shift']; language: Language }
