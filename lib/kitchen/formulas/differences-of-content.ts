import 'server-only'
import type { StageKind } from '../../db/generated/enums'
import type { VersionContent } from '../../documents/version-content/text-of-version-content'

export type LineDifference = {
  stageKind: StageKind
  /** Which of the stages of that kind, from 1. */
  stageNumber: number
  stageName: string
  ingredientId: string
  ingredientName: string
  /** % on flour; null where the version has no such line. An ingredient that is in a stage twice is added up. */
  fromPct: number | null
  toPct: number | null
}

type Measured =
  | 'pieces'
  | 'scalingMassG'
  | 'doughLossPct'
  | 'doughTempC'
  | 'mixTimeS'
  | 'bulkTimeS'
  | 'proofTimeS'
  | 'bakeTempC'
  | 'bakeTimeS'

export type ContentDifferences = {
  lines: (LineDifference & { isSame: boolean })[]
  measured: { name: Measured; from: number; to: number; isSame: boolean }[]
  method: { from: string; to: string; isSame: boolean }
}

/** Below this two percentages are one number: binary fractions of the same written figure. */
const samePct = 1e-9

/**
 * Two contents line by line: in the order of the newer, then what is gone. A line is the same line when it is the
 * same ingredient in the same stage (by kind, and number among those of its kind).
 */
export function differencesOfContent(from: VersionContent, to: VersionContent): ContentDifferences {
  const [fromLines, toLines] = [linesOf(from), linesOf(to)]
  const lines = [...new Set([...toLines.keys(), ...fromLines.keys()])].flatMap((key) => {
    const [before, after] = [fromLines.get(key), toLines.get(key)]
    const named = after ?? before
    if (!named) return []
    const { pctFlour: _, ...names } = named
    const isSame = before !== undefined && after !== undefined && Math.abs(before.pctFlour - after.pctFlour) < samePct
    return [{ ...names, fromPct: before?.pctFlour ?? null, toPct: after?.pctFlour ?? null, isSame }]
  })
  const [fromValues, toValues] = [measuredOf(from), measuredOf(to)]
  const names = Object.keys(toValues) as Measured[]
  return {
    lines,
    measured: names.map((name) => ({
      name,
      from: fromValues[name],
      to: toValues[name],
      isSame: fromValues[name] === toValues[name],
    })),
    method: { from: from.process.method, to: to.process.method, isSame: from.process.method === to.process.method },
  }
}

type Line = Pick<LineDifference, 'stageKind' | 'stageNumber' | 'stageName' | 'ingredientId' | 'ingredientName'> & {
  pctFlour: number
}

function linesOf(content: VersionContent): Map<string, Line> {
  const lines = new Map<string, Line>()
  const stagesOfKind = new Map<StageKind, number>()
  for (const stage of content.stages) {
    const stageNumber = (stagesOfKind.get(stage.kind) ?? 0) + 1
    stagesOfKind.set(stage.kind, stageNumber)
    for (const { ingredient, pctFlour } of stage.lines) {
      const key = `${stage.kind}.${stageNumber}.${ingredient.id}`
      const before = lines.get(key)?.pctFlour ?? 0
      lines.set(key, {
        stageKind: stage.kind,
        stageNumber,
        stageName: stage.name,
        ingredientId: ingredient.id,
        ingredientName: ingredient.name,
        pctFlour: before + pctFlour,
      })
    }
  }
  return lines
}

function measuredOf({ batch, process }: VersionContent): Record<Measured, number> {
  const { method: _, ...times } = process
  return { ...batch, ...times }
}
