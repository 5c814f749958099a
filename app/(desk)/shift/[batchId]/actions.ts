'use server'

import { act } from '@/app/act'
import { textOf } from '@/lib/ui/text-of'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { noteCause } from '@/lib/kitchen/shifts/note-cause'
import { noteFoundCause } from '@/lib/kitchen/shifts/note-found-cause'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { countPieces } from '@/lib/kitchen/shifts/count-pieces'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { signFoundCause } from '@/lib/kitchen/shifts/sign-found-cause'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'
import { swapDoughs } from '@/lib/kitchen/repairs/swap-doughs'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { logWeighings } from '@/lib/kitchen/weighings/log-weighings'
import { smallMassUnit, type MassUnits } from '@/lib/words/format/mass'
import type { FormState } from '@/lib/ui/form-state'

export async function begin(
  batchId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const swapWhy = textOf(form, 'swapWhy').trim()
  const input = {
    batchId,
    seenRevision,
    cleanDownDone: form.has('cleanDownDone'),
    swapWhy: swapWhy === '' ? undefined : swapWhy,
  }
  const acted = await act(beginBatch, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function moveOn(
  batchId: string,
  seenRevision: number,
  to: string,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const why = textOf(form, 'why').trim()
  const acted = await act(
    moveBatch,
    { batchId, seenRevision, to, ...(to === 'measured' && why !== '' ? { why } : {}) },
    form,
    former,
  )
  return acted.ok ? acted.done() : acted.state
}

export async function undo(
  batchId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(undoMove, { batchId, seenRevision }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function openKey(batchId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(openDoughKey, { batchId }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function takeOut(
  batchId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(
    moveBatch,
    { batchId, seenRevision, to: textOf(form, 'to'), why: textOf(form, 'why') },
    form,
    former,
  )
  return acted.ok ? acted.done() : acted.state
}

export async function note(batchId: string, former: FormState, form: FormData): Promise<FormState> {
  const input = { batchId, what: textOf(form, 'what'), noticedMinAgo: wholeNumberOf(form, 'noticedMinAgo') }
  const acted = await act(noteCause, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function noteFound(batchId: string, former: FormState, form: FormData): Promise<FormState> {
  const input = { batchId, object: textOf(form, 'object'), what: textOf(form, 'what') }
  const acted = await act(noteFoundCause, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function signFound(
  foundCauseId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const acted = await act(signFoundCause, { foundCauseId, seenRevision }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function again(batchId: string, former: FormState, form: FormData): Promise<FormState> {
  const acted = await act(bakeAgain, { batchId }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function exchange(
  batchId: string,
  seenTurn: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = { batchId, seenTurn, otherId: textOf(form, 'otherId'), why: textOf(form, 'why') }
  const acted = await act(swapDoughs, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function count(
  batchId: string,
  seenRevision: number,
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const input = {
    batchId,
    seenRevision,
    piecesMade: wholeNumberOf(form, 'piecesMade'),
    piecesGood: wholeNumberOf(form, 'piecesGood'),
    sampled: saidNumberOf(form, 'sampled'),
    sold: saidNumberOf(form, 'sold'),
    given: saidNumberOf(form, 'given'),
    wasted: saidNumberOf(form, 'wasted'),
  }
  const acted = await act(countPieces, input, form, former)
  return acted.ok ? acted.done() : acted.state
}

type LinePlace = { stageId: string; ingredientId: string; part: string; seenId: string | null }

export async function weighAsPlanned(
  batchId: string,
  units: MassUnits,
  places: readonly LinePlace[],
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const lines = places.map((place, at) => ({ ...place, how: 'ticked', ...lotsOf(form, at) }))
  const acted = await act(logWeighings, { batchId, lines, unit: smallMassUnit(units), confirmed: false }, form, former)
  return acted.ok ? acted.done() : acted.state
}

export async function weigh(
  batchId: string,
  units: MassUnits,
  places: readonly LinePlace[],
  former: FormState,
  form: FormData,
): Promise<FormState> {
  const lines = places.map((place, at) => {
    const mass = textOf(form, `lines.${at}.mass`).trim()
    const how = form.has(`lines.${at}.none`) ? 'left_out' : mass === '' ? null : 'weighed'
    const lots = lotsOf(form, at)
    // A lot without a weight is half of a line, and not none.
    const isSaid = how !== null || lots.lots !== undefined
    return { ...place, how: isSaid ? (how ?? 'weighed') : null, ...(mass === '' ? {} : { mass }), ...lots }
  })
  const reason = textOf(form, 'reason').trim()
  const acted = await act(
    logWeighings,
    {
      batchId,
      lines,
      unit: smallMassUnit(units),
      confirmed: form.has('confirmed'),
      ...(reason === '' ? {} : { reason }),
    },
    form,
    former,
  )
  return acted.ok ? acted.done() : acted.state
}

/** From which lots a line of the form was taken; nothing where nobody said it. */
function lotsOf(form: FormData, at: number): { lots?: { lotId?: string; mass?: string }[] } {
  const typed = [0, 1].map((which) => {
    const lotId = textOf(form, `lines.${at}.lots.${which}.lotId`)
    const mass = textOf(form, `lines.${at}.lots.${which}.mass`).trim()
    return { ...(lotId === '' ? {} : { lotId }), ...(mass === '' ? {} : { mass }) }
  })
  const last = typed.findLastIndex((lot) => Object.keys(lot).length > 0)
  return last === -1 ? {} : { lots: typed.slice(0, last + 1) }
}

/** A count as typed; what is no number goes on as it is, so that the schema says so at the field. */
function wholeNumberOf(form: FormData, name: string): number | string {
  const typed = textOf(form, name).trim()
  return /^\d{1,9}$/.test(typed) ? Number(typed) : typed
}

/** As `wholeNumberOf`, of a count that need not be said. */
function saidNumberOf(form: FormData, name: string): number | string | null {
  const typed = wholeNumberOf(form, name)
  return typed === '' ? null : typed
}
