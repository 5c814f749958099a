'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { chooseLines } from '@/lib/kitchen/trials/choose-lines'
import { addDay } from '@/lib/kitchen/repairs/add-day'
import { dateMixingDays } from '@/lib/kitchen/trials/date-mixing-days'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import { stopTrial } from '@/lib/kitchen/trials/stop-trial'
import { withdrawPlan } from '@/lib/kitchen/trials/withdraw-plan'
import type { LinePlace } from '@/lib/kitchen/trials/scale-of-lines'
import type { FormState } from '@/lib/ui/form-state'

export async function propose(
  trialId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(proposePlan, { trialId, seenRevision }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function decide(
  seen: { trialId: string; seenRevision: number; planHash: string },
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = { ...seen, verdict: textOf(form, 'verdict') || undefined, note: textOf(form, 'note') }
  const acted = await act(decidePlan, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function stop(
  trialId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(stopTrial, { trialId, seenRevision, reason: textOf(form, 'reason') }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function withdraw(
  trialId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(withdrawPlan, { trialId, seenRevision }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function dateDays(
  trialId: string,
  seen: { number: number; seen: string | null }[],
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const days = seen.map((day, i) => ({ ...day, day: textOf(form, `days.${i}.day`) || null }))
  const acted = await act(dateMixingDays, { trialId, days }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function addWholeDay(
  trialId: string,
  number: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(addDay, { trialId, number }, form, former)
  return acted.ok ? acted.done() : acted.state
}

/** What is left as usual is sent empty. */
const moves: Record<string, boolean | undefined> = { moves: true, stays: false }

export async function chooseForLines(
  trialId: string,
  seenRevision: number,
  places: LinePlace[],
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const lines = places.map((place, l) => {
    const typed = textOf(form, `lines.${l}.mayMove`)
    return {
      ...place,
      mayMove: typed === '' ? null : (moves[typed] ?? typed),
      scaleId: textOf(form, `lines.${l}.scaleId`) || null,
    }
  })
  const acted = await act(chooseLines, { trialId, seenRevision, lines }, form, former)
  return acted.ok ? acted.done() : acted.state
}
