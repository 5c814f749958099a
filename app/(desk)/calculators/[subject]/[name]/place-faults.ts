import 'server-only'
import { toScreen } from '@/lib/kitchen/calculators/on-screen'
import type { FieldShape } from '@/lib/kitchen/calculators/shape-of-schema'
import type { Fault } from '@/lib/kitchen/calculators/fault-of-calc-error'
import { wordsOfFault } from '@/lib/kitchen/calculators/words-of-fault'
import { paragraph } from '@/lib/words/paragraph'
import { say, sayName } from '@/lib/words/say'
import type { Sayer } from '../../sayer'
import { rowCount, type Typed } from './typed'

export type PlacedFaults = {
  /** What is wrong at each control of the form, by its name. */
  at: ReadonlyMap<string, string>
  /** Every fault once, in order, with the control that it leads to and what that is called. */
  all: readonly { fieldId: string; label: string; text: string }[]
}

/** Finds for each fault the control of the form that it belongs to: its own, or the list or table that it is in. */
export function placeFaults(
  faults: readonly Fault[],
  fields: readonly FieldShape[],
  typed: Typed,
  sayer: Sayer,
): PlacedFaults {
  const controls = new Map(controlsOf(fields, typed, sayer))
  const at = new Map<string, string>()
  const all = faults.map((fault) => {
    const name = nearest(fault.path, controls)
    // A field that nobody knows is called as somebody typed it; a name of the calculation's own tells a person nothing.
    const isTyped = fault.code === 'unknown-field'
    const label = controls.get(name) ?? (isTyped ? fault.path : sayer.text.question)
    const rest = controls.has(name) ? fault.path.slice(name.length + 1) : isTyped ? '' : fault.path
    const text = within(rest, wordsOfFault(onScreen(fault), sayer), isTyped, sayer)
    at.set(name, paragraph([at.get(name), text], sayer.language))
    return { fieldId: name || 'question', label, text }
  })
  return { at, all }
}

const ofRange: ReadonlySet<string> = new Set(['below-range', 'not-above', 'above-range', 'not-below', 'outside-range'])

/** The bounds of a figure in the unit that it was asked in. */
function onScreen(fault: Fault): Fault {
  const name = fault.path.split('.').findLast((part) => !isIndex(part))
  if (name === undefined || !ofRange.has(fault.code)) return fault
  const facts = Object.fromEntries(
    Object.entries(fault.facts).map(([key, fact]) => [key, typeof fact === 'number' ? toScreen(name, fact) : fact]),
  )
  return { ...fault, facts }
}

/** Every control with its label, tables and groups too: what is wrong with a table as a whole is said below it. */
function controlsOf(
  fields: readonly FieldShape[],
  typed: Typed,
  sayer: Sayer,
  path = '',
  before = '',
): [string, string][] {
  return fields.flatMap(({ name, shape }) => {
    const at = `${path}${name}`
    const label = before
      ? sayName(sayer.text.reference.inside, sayer.language, { group: before, name: sayer.own.field(name) })
      : sayer.own.field(name)
    const self: [string, string] = [at, label]
    if (shape.kind === 'group') return [self, ...controlsOf(shape.fields, typed, sayer, `${at}.`, label)]
    if (shape.kind !== 'list' || shape.of.kind !== 'group') return [self]
    const { fields: columns } = shape.of
    const rows = Array.from({ length: Math.max(1, rowCount(typed, at)) }, (_, row) =>
      controlsOf(
        columns,
        typed,
        sayer,
        `${at}.${row}.`,
        sayName(sayer.text.row, sayer.language, { number: row + 1, name: label }),
      ),
    )
    return [self, ...rows.flat()]
  })
}

function nearest(path: string, controls: ReadonlyMap<string, string>): string {
  const parts = path.split('.')
  for (let length = parts.length; length > 0; length--) {
    const name = parts.slice(0, length).join('.')
    if (controls.has(name)) return name
  }
  return ''
}

/** Says at which value of a list it is; of what the form has no place for, its row and what it is called, where it has words. */
function within(rest: string, fault: string, isTyped: boolean, sayer: Sayer): string {
  return paragraph([whereIn(rest, isTyped, sayer), fault], sayer.language)
}

function whereIn(rest: string, isTyped: boolean, { own, text, language }: Sayer): string | null {
  if (rest === '') return null
  const [first, second] = rest.split('.').map((part) => Number(part) + 1)
  if (first !== undefined && second === undefined && Number.isInteger(first))
    return say(text.atValue, language, { number: first })
  if (Number.isInteger(first) && Number.isInteger(second))
    return say(text.atValueOfLine, language, { line: first ?? 0, number: second ?? 0 })
  if (isTyped) return say(text.atPart, language, { part: rest })
  const parts = rest.split('.')
  const name = parts.findLast((part) => !isIndex(part)) ?? ''
  if (own.field(name) === name) return null
  const index = parts.findLast(isIndex)
  const part =
    index === undefined
      ? own.field(name)
      : sayName(text.row, language, { number: Number(index) + 1, name: own.field(name) })
  return say(text.atPart, language, { part })
}

function isIndex(part: string): boolean {
  return /^\d+$/.test(part)
}
