import type { EditorLine, EditorStage, GivenStage } from './editor-state'

/** Drafts of before ingredients were searched hold no names. */
type KeptStage = Omit<EditorStage, 'lines'> & {
  lines: (Omit<EditorLine, 'ingredientName'> & { ingredientName?: unknown })[]
}

/** The stages that the editor itself wrote as a text, or null where the text is none of its own. */
export function stagesOfText(text: string | undefined): readonly GivenStage[] | null {
  try {
    const stages: unknown = JSON.parse(text ?? 'null')
    return isStages(stages)
      ? stages.map(({ kind, name, lines }) => ({
          kind,
          name,
          lines: lines.map(({ ingredientId, ingredientName, pctFlour }) => ({
            ingredientId,
            ingredientName: typeof ingredientName === 'string' ? ingredientName : '',
            pctFlour,
          })),
        }))
      : null
  } catch {
    return null
  }
}

function isStages(stages: unknown): stages is KeptStage[] {
  return (
    Array.isArray(stages) &&
    stages.every(
      (stage) =>
        hasTexts(stage, ['kind', 'name']) &&
        Array.isArray(stage.lines) &&
        stage.lines.every((line: unknown) => hasTexts(line, ['ingredientId', 'pctFlour'])),
    )
  )
}

function hasTexts(of: unknown, names: readonly string[]): of is Record<string, unknown> {
  return (
    typeof of === 'object' &&
    of !== null &&
    names.every((name) => typeof (of as Record<string, unknown>)[name] === 'string')
  )
}
