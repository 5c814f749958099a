import 'server-only'
import type { getAmendments } from '@/lib/kitchen/amendments/get-amendments'
import type { AnswerOf } from '@/lib/kitchen/query'

export type ShownAmendments = NonNullable<AnswerOf<typeof getAmendments>>
export type ShownAmendment = ShownAmendments['amendments'][number]
