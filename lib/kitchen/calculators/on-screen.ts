import 'server-only'
import { Decimal } from 'decimal.js'
import { unitEnding, type UnitEnding } from './unit-ending'

/** How the figures of a unit are asked and shown on screens: the one list of it. What is not here is shown as it is. */
type ScreenForm = {
  /** The unit instead, and the power of ten between them. */
  instead?: { unit: UnitEnding; tens: number }
  /** Digits after the decimal mark of a figure that was worked out. */
  decimals?: number
  /** Significant digits of a figure that was worked out, beside all before the decimal mark. */
  significant?: number
}

/** A share of 1 is asked and answered as %. */
const asPct: ScreenForm = { instead: { unit: 'Pct', tens: 2 } }
/** No thermometer of a bakery tells more than tenths. */
const tenths: ScreenForm = { decimals: 1 }
/** Heat and time are never known closer. */
const four: ScreenForm = { significant: 4 }

const screenForms: Partial<Record<UnitEnding, ScreenForm>> = {
  Share: asPct,
  Shares: asPct,
  C: tenths,
  TempF: tenths,
  DifferenceF: tenths,
  J: four,
  JPerG: four,
  JPerKg: four,
  JPerK: four,
  JPerGK: four,
  JPerKgMin: four,
  JoulePerKgMin: four,
  JPerKgK: four,
  W: four,
  Kwh: four,
  Min: four,
  minutes: four,
  H: four,
}

/** The unit that a field is asked and shown in on screens; undefined for a plain number, a text or a choice. */
export function screenUnit(name: string): UnitEnding | undefined {
  return formOf(name).instead?.unit ?? unitEnding(name)
}

/** A figure of a calculation in its screen's unit: 0.015 of 1 is 1.5 %. */
export function toScreen(name: string, value: number): number {
  return tensOf(name) === 0 || !Number.isFinite(value) ? value : Number(toScreenText(name, value))
}

/** The same as decimal text with every digit, from which fromScreen reads the very figure. @param value finite */
export function toScreenText(name: string, value: number): string {
  return new Decimal(value).times(Decimal.pow(10, tensOf(name))).toFixed()
}

/** What was typed in a screen's unit as the calculation takes it: the inverse of toScreen. */
export function fromScreen(name: string, decimal: string): number {
  const tens = tensOf(name)
  return tens === 0 ? Number(decimal) : new Decimal(decimal).div(Decimal.pow(10, tens)).toNumber()
}

/** How exactly a worked-out figure is shown. */
export function screenDigits(name: string): Pick<ScreenForm, 'decimals' | 'significant'> {
  const { decimals, significant } = formOf(name)
  return { ...(decimals === undefined ? {} : { decimals }), ...(significant === undefined ? {} : { significant }) }
}

const tensOf = (name: string) => formOf(name).instead?.tens ?? 0

function formOf(name: string): ScreenForm {
  const ending = unitEnding(name)
  return (ending && screenForms[ending]) ?? {}
}
