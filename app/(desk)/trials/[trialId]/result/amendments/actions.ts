'use server'

import { act } from '@/app/act'
import { decideAmendment } from '@/lib/kitchen/amendments/decide-amendment'
import { proposeAmendment } from '@/lib/kitchen/amendments/propose-amendment'
import { proposeNotCounting } from '@/lib/kitchen/amendments/propose-not-counting'
import { signSlip } from '@/lib/kitchen/amendments/sign-slip'
import type { FormState } from '@/lib/ui/form-state'
import { numberOf } from '@/lib/ui/number-of'
import { textOf } from '@/lib/ui/text-of'

export async function propose(trialId: string, locale: string, former: FormState, form: FormData): Promise<FormState> {
  const input = {
    trialId,
    what: textOf(form, 'what') || undefined,
    doughId: textOf(form, 'doughId') || undefined,
    measureId: textOf(form, 'measureId') || undefined,
    piece: numberOf(form, 'piece', locale) ?? null,
    repeat: numberOf(form, 'repeat', locale),
    value: textOf(form, 'value'),
    reason: textOf(form, 'reason'),
  }
  const acted = await act(proposeAmendment, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function proposeOut(trialId: string, former: FormState, form: FormData): Promise<FormState> {
  const input = { trialId, doughId: textOf(form, 'doughId') || undefined, reason: textOf(form, 'reason') }
  const acted = await act(proposeNotCounting, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

const choices = new Map([
  ['yes', true],
  ['no', false],
])

export async function decide(
  amendmentId: string,
  seenHash: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = { amendmentId, seenHash, accept: choices.get(textOf(form, 'accept')), note: textOf(form, 'note') }
  const acted = await act(decideAmendment, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function sign(
  trialId: string,
  amendedHash: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(signSlip, { trialId, amendedHash, reason: textOf(form, 'reason') }, form, former)
  return acted.ok ? acted.done() : acted.state
}
