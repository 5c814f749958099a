import type { z } from 'zod'
import type { logCheckInput } from '../../kitchen/checks/log-check.input'
import type { logNoteInput } from '../../kitchen/notes/log-note.input'
import type { correctReadingInput } from '../../kitchen/readings/correct-reading.input'
import type { logReadingInput } from '../../kitchen/readings/log-reading.input'
import type { logStepInput } from '../../kitchen/steps/log-step.input'
import type { logCauseInput } from '../../kitchen/shifts/log-cause.input'
import type { logCountInput } from '../../kitchen/shifts/log-count.input'
import type { logWeighingInput } from '../../kitchen/weighings/log-weighing.input'

/** Of each kind of entry what is sent, and what shows it on the tablet without the floor that it was made on. */
export type KindFacts = {
  reading: {
    payload: z.input<typeof logReadingInput>
    shown: { code: string; measure: string; piece: number | null; level: string | null; repeat: number; unit: string }
  }
  correction: {
    payload: z.input<typeof correctReadingInput>
    shown: {
      code: string
      measure: string
      batchId: string
      measureId: string
      level: string | null
      /** What stood there. */
      was: string
      /** When it was made; what is sent says it nowhere. */
      at: string
    }
  }
  weighing: {
    payload: z.input<typeof logWeighingInput>
    shown: {
      code: string
      line: string
      /** What stood there and is corrected; null where nothing did. */
      was: string | null
      /** Of the lots that it came from, in their order; a build before this one kept none. */
      lots?: { code: string; isPast: boolean; isToConfirm?: boolean }[]
    }
  }
  step: {
    payload: z.input<typeof logStepInput>
    shown: {
      code: string
      /** It takes the place of one that was wrong. */
      isFix: boolean
    }
  }
  cause: { payload: z.input<typeof logCauseInput>; shown: { code: string } }
  count: { payload: z.input<typeof logCountInput>; shown: { code: string } }
  check: {
    payload: z.input<typeof logCheckInput>
    shown: {
      instrument: string
      /** As this tablet judged it. */
      isGood: boolean
    }
  }
  note: { payload: z.input<typeof logNoteInput>; shown: { code: string | null } }
}
