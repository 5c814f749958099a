import 'server-only'
import { readPlan } from '../../documents/plan/read-plan'
import { refusalOfUnread } from '../refusal-of-unread'
import type { Plan } from './plan-types'

/** A plan as it was proposed, for whom there is nothing to show without it. @throws Refusal 'unknown-format' | 'damaged-text' */
export function planOfText(text: string, hash: string): Plan {
  const read = readPlan(text, hash)
  if (read.outcome !== 'read') throw refusalOfUnread(read)
  return read.plan
}
