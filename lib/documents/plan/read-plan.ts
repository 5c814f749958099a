import 'server-only'
import { hashOfText } from '../hash-of-text'
import { keepRead } from '../keep-read'
import { openDocument, type Unread } from '../open-document'
import { asFormat2 } from './as-format-2'
import { asFormat3 } from './as-format-3'
import { asFormat4 } from './as-format-4'
import { asFormat5 } from './as-format-5'
import { planOfFormat1 } from './plan-of-format-1'
import { planOfFormat2 } from './plan-of-format-2'
import { planOfFormat3 } from './plan-of-format-3'
import { planOfFormat4 } from './plan-of-format-4'
import { planOfFormat5, type PlanOfFormat5 } from './plan-of-format-5'
import type { PlanContent } from './text-of-plan'

export type PlanRead = { outcome: 'read'; format: number; plan: PlanContent } | Unread

/** Reads a plan that was proposed, in this format or a former one, which is filled up with what it could not say. */
export function readPlan(text: string, hash: string): PlanRead {
  if (hashOfText(text) !== hash) return { outcome: 'damaged' }
  return readText(text)
}

const readText = keepRead((text): PlanRead => {
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  switch (format) {
    case 1: {
      const plan = planOfFormat1.safeParse(value).data
      return found(format, plan && asFormat5(asFormat4(asFormat3(asFormat2(plan)))))
    }
    case 2: {
      const plan = planOfFormat2.safeParse(value).data
      return found(format, plan && asFormat5(asFormat4(asFormat3(plan))))
    }
    case 3: {
      const plan = planOfFormat3.safeParse(value).data
      return found(format, plan && asFormat5(asFormat4(plan)))
    }
    case 4: {
      const plan = planOfFormat4.safeParse(value).data
      return found(format, plan && asFormat5(plan))
    }
    case 5:
      return found(format, planOfFormat5.safeParse(value).data)
    default:
      return { outcome: 'unknown-format', format }
  }
})

function found(format: number, read: PlanOfFormat5 | undefined): PlanRead {
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...plan } = read
  return { outcome: 'read', format, plan }
}
