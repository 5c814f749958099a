'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { decimalTextOf } from '@/lib/ui/decimal-text-of'
import { massOf } from '@/lib/ui/mass-of'
import { enterPrice } from '@/lib/kitchen/stores/enter-price'
import { endLot } from '@/lib/kitchen/stores/end-lot'
import { confirmLot } from '@/lib/kitchen/stores/confirm-lot'
import { matchLot } from '@/lib/kitchen/stores/match-lot'
import { receiveLot } from '@/lib/kitchen/stores/receive-lot'
import { numberOf } from '@/lib/ui/number-of'
import type { FormState } from '@/lib/ui/form-state'
import type { MassUnit } from '@/lib/words/format/mass'

/** Locale and unit are bound by the page, so that a number means what stood beside its field. */
export async function enter(
  ingredientId: string,
  locale: string,
  unit: MassUnit,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = {
    ingredientId,
    holdsFrom: textOf(form, 'holdsFrom') || undefined,
    packMassG: massOf(form, 'packMassG', locale, unit),
    packPrice: decimalTextOf(form, 'packPrice', locale),
    supplier: textOf(form, 'supplier'),
  }
  const acted = await act(enterPrice, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function receive(
  ingredientId: string,
  locale: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const strength = {
    of: textOf(form, 'strength.of'),
    value: numberOf(form, 'strength.value', locale),
    unit: textOf(form, 'strength.unit'),
  }
  const isMeasured = strength.value !== undefined || strength.of.trim() !== '' || strength.unit.trim() !== ''
  const input = {
    ingredientId,
    code: textOf(form, 'code'),
    receivedOn: textOf(form, 'receivedOn') || undefined,
    bestBefore: textOf(form, 'bestBefore') || null,
    strength: isMeasured ? strength : null,
    note: textOf(form, 'note'),
  }
  const acted = await act(receiveLot, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function end(former: FormState, form: FormData): Promise<FormState> {
  const input = { lotId: textOf(form, 'lotId') || undefined, why: textOf(form, 'why') || undefined }
  const acted = await act(endLot, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function confirm(former: FormState, form: FormData): Promise<FormState> {
  const input = {
    lotId: textOf(form, 'lotId') || undefined,
    receivedOn: textOf(form, 'receivedOn') || undefined,
    bestBefore: textOf(form, 'bestBefore') || null,
  }
  const acted = await act(confirmLot, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function match(former: FormState, form: FormData): Promise<FormState> {
  const input = { lotId: textOf(form, 'lotId') || undefined, sameAsId: textOf(form, 'sameAsId') || undefined }
  const acted = await act(matchLot, input, form, former)
  return acted.ok ? acted.done() : acted.state
}
