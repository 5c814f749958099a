import { digitsOfStep } from '../../words/format/digits-of-step'
import { massInUnit, type MassUnit } from '../../words/format/mass'
import { formatNumber } from '../../words/format/number'
import { withUnit } from '../../words/format/with-unit'

/** How masses are written on this tablet: in the unit of the list, with the digits that a scale shows. */
export function massWriter({ unit, locale }: { unit: MassUnit; locale: string }) {
  const bare = (massG: number, stepG: number): string =>
    formatNumber(massInUnit(massG, unit), { locale, digits: digitsOfStep(massInUnit(stepG, unit)) })
  const write = (massG: number, stepG: number): string => withUnit(bare(massG, stepG), unit)
  /** `bare` is without the unit, which stands at the end of a range. */
  return Object.assign(write, { bare })
}

export type MassWriter = ReturnType<typeof massWriter>
