import 'server-only'
import type { Closing } from '../../documents/closing/closing'
import { analyseTrial } from '../results/analyse-trial'
import type { CountedOtherwise } from '../results/counted-otherwise'
import { judgeContent } from '../results/judge-content'

/** What was closed, judged again, and the comparison of it with some doughs counted otherwise. */
export function judgedAgain(closing: Closing) {
  const declared = { ...closing.declared, state: closing.closed.state }
  return {
    declared,
    judged: judgeContent(closing, closing.declared),
    compared(counted: CountedOtherwise | null) {
      const comparison = counted && analyseTrial(declared, counted.batches).comparison
      return counted && comparison && { codes: counted.codes, comparison }
    },
  }
}
