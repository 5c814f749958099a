import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { getBatch } from '@/lib/kitchen/shifts/get-batch'
import type { Language, Words } from '@/lib/words/words'

type ValueOf<Q extends { call(...q: never): Promise<unknown> }> = Extract<Awaited<ReturnType<Q['call']>>, { ok: true }> extends { value: infer Value } ? Value : never

export type BatchShown = ValueOf<typeof getBatch>
export type BakeryShown = ValueOf<typeof getDesk>['bakery']

/** What each part of the batch page is given. */
export type BatchPart = { batch: BatchShown; bakery: BakeryShown; words: Words['shift']; language: Language }
