import 'server-only'
import { planFormat } from '@/lib/words/format/plan-format'
import { say, sayName } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import type { BakeryShown, BatchShown } from './batch-view'

type Line = NonNullable<BatchShown['weighed']>[number]

/** How the lines of one batch are called and their weights written; a weight only for who knows the dough. */
export function lineWords(
  lines: readonly Line[],
  bakery: BakeryShown,
  text: Words['shift']['weighed'],
  language: Language,
) {
  const format = planFormat(bakery)
  const hasStages = new Set(lines.map(({ stage }) => stage.id)).size > 1
  const name = ({ stage, ingredient, part, isApart }: Line): string => {
    const line = sayName(text.part[part === 'dose' && !isApart ? 'line' : part], language, {
      ingredient: ingredient.name,
    })
    return hasStages ? sayName(text.lineOf, language, { line, stage: stage.name || text.stages[stage.kind] }) : line
  }
  const target = (line: Line): string | null => {
    if (!line.target) return null
    const { massG, stepG } = line.target
    return massG > 0 ? say(text.target, language, { mass: format.weighedInUnit(massG, stepG) }) : text.targetNone
  }
  return {
    name,
    target,
    /** With its weight where that is known. */
    planned: (line: Line): string =>
      line.target
        ? sayName(text.lineWithMass, language, {
            line: name(line),
            mass: format.weighedInUnit(line.target.massG, line.target.stepG),
          })
        : name(line),
    field: (line: Line, unit: string): string => sayName(text.field, language, { line: name(line), unit }),
    none: (line: Line): string => say(text.noneFull, language, { line: name(line) }),
    mass: (massG: number, line: Line): string => format.weighedInUnit(massG, line.target?.stepG ?? 1),
  }
}

export type LineWords = ReturnType<typeof lineWords>
