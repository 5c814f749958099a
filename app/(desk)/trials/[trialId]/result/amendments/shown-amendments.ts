import 'server-only'
import type { getResult } from '@/lib/kitchen/amendments/get-result'
import type { AnswerOf } from '@/lib/kitchen/query'

export type ShownAmendments = NonNullable<AnswerOf<typeof getResult>['after']>
export type ShownAmendment = ShownAmendments['amendments'][number]
