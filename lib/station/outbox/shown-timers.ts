import type { Phase } from '../../kitchen/steps/course-of-dough.input'
import { lookAt, type LookPhase } from '../../kitchen/steps/looks.input'
import type { CalledLook, RunningTimer } from './steps-of-dough'

/** A timer or a look as it stands at a moment, and by what it is silenced. */
export type ShownTimer = {
  key: string
  batchId: string
  code: string
  phase: Phase | LookPhase
  fromMs: number
  endsMs: number
  plannedS: number
  calls: 'time' | 'look' | 'longest'
}

/** Everything that runs at a moment, what is over first and then what will be. */
export function shownTimers(
  timers: readonly RunningTimer[],
  looks: readonly CalledLook[],
  nowMs: number,
): ShownTimer[] {
  const called = looks.flatMap((look): ShownTimer[] => {
    const now = lookAt(look, nowMs)
    if (!now) return []
    const { batchId, code, phase, fromMs } = look
    const { key, endsMs, isLongest } = now
    const plannedS = (endsMs - fromMs) / 1000
    return [{ key, batchId, code, phase, fromMs, endsMs, plannedS, calls: isLongest ? 'longest' : 'look' }]
  })
  return [
    ...timers.map(({ stepId, ...timer }): ShownTimer => ({ ...timer, key: stepId, calls: 'time' })),
    ...called,
  ].sort((a, b) => a.endsMs - b.endsMs)
}
