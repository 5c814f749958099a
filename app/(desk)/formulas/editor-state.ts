import type { FiguredStage } from '@/lib/kitchen/formulas/rules'

/** Lines and stages as they are being typed. Keys stay with their row wherever it is moved. */
/** `ingredientId` is empty where nothing is chosen, whatever stands as its name. */
export type EditorLine = { key: number; ingredientId: string; ingredientName: string; pctFlour: string }
export type EditorStage = { key: number; kind: FiguredStage['kind']; name: string; lines: readonly EditorLine[] }

export type EditorState = {
  stages: readonly EditorStage[]
  nextKey: number
  /** Element that takes the focus next, with a number so that the same one can take it twice. */
  focus: { id: string; turn: number } | null
}

export type EditorAction =
  /** From other lines than those that were there. */
  | { do: 'begin-again'; stages: readonly GivenStage[] }
  | { do: 'change-line'; line: number; to: Partial<Omit<EditorLine, 'key'>> }
  /** Names by the ids of their ingredients, as they are now. */
  | { do: 'name-ingredients'; names: ReadonlyMap<string, string> }
  | { do: 'add-line'; stage: number; after?: number }
  | { do: 'remove-line'; line: number }
  | { do: 'move-line'; line: number; by: -1 | 1; focus: string }
  | { do: 'change-stage'; stage: number; to: Partial<Pick<EditorStage, 'kind' | 'name'>> }
  | { do: 'add-stage' }
  | { do: 'remove-stage'; stage: number }
  | { do: 'move-stage'; stage: number; by: -1 | 1 }

export const lineFieldId = (line: number, field: 'ingredientId' | 'pctFlour') => `line-${line}-${field}`
export const stageFieldId = (stage: number, field: 'kind' | 'name' | 'lines') => `stage-${stage}-${field}`

export type GivenStage = { kind: FiguredStage['kind']; name: string; lines: readonly Omit<EditorLine, 'key'>[] }

export const blankLine: GivenStage['lines'][number] = { ingredientId: '', ingredientName: '', pctFlour: '' }

/** The state to begin with. */
export function editorStateOf(given: readonly GivenStage[]): EditorState {
  let nextKey = 1
  const stages = given.map((stage) => ({
    ...stage,
    key: nextKey++,
    lines: stage.lines.map((line) => ({ ...line, key: nextKey++ })),
  }))
  return { stages, nextKey, focus: null }
}

/** What a step makes of the state. A line moved past the edge of its stage goes to the next one. */
export function editorStep(state: EditorState, action: EditorAction): EditorState {
  const { stages, nextKey } = state
  const turn = (state.focus?.turn ?? 0) + 1
  switch (action.do) {
    case 'begin-again':
      return editorStateOf(action.stages)
    case 'change-line':
      return {
        ...state,
        stages: stages.map((stage) => ({
          ...stage,
          lines: stage.lines.map((line) => (line.key === action.line ? { ...line, ...action.to } : line)),
        })),
      }
    case 'name-ingredients':
      return {
        ...state,
        stages: stages.map((stage) => ({
          ...stage,
          lines: stage.lines.map((line) => ({
            ...line,
            ingredientName: action.names.get(line.ingredientId) ?? line.ingredientName,
          })),
        })),
      }
    case 'change-stage':
      return {
        ...state,
        stages: stages.map((stage) => (stage.key === action.stage ? { ...stage, ...action.to } : stage)),
      }
    case 'add-line': {
      const line: EditorLine = { key: nextKey, ...blankLine }
      const into = (stage: EditorStage) => {
        const at = stage.lines.findIndex(({ key }) => key === action.after) + 1 || stage.lines.length
        return { ...stage, lines: [...stage.lines.slice(0, at), line, ...stage.lines.slice(at)] }
      }
      return {
        stages: stages.map((stage) => (stage.key === action.stage ? into(stage) : stage)),
        nextKey: nextKey + 1,
        focus: { id: lineFieldId(nextKey, 'ingredientId'), turn },
      }
    }
    case 'remove-line': {
      const lines = stages.flatMap((stage) => stage.lines)
      const at = lines.findIndex(({ key }) => key === action.line)
      const neighbour = lines[at + 1] ?? lines[at - 1]
      const rest = stages.map((stage) => ({ ...stage, lines: stage.lines.filter(({ key }) => key !== action.line) }))
      return {
        ...state,
        stages: rest,
        focus: neighbour ? { id: lineFieldId(neighbour.key, 'ingredientId'), turn } : null,
      }
    }
    case 'move-line':
      return { ...state, stages: moveLine(stages, action.line, action.by), focus: { id: action.focus, turn } }
    case 'add-stage': {
      const kind = stages.some((stage) => stage.kind === 'final_dough') ? 'pre_ferment' : 'final_dough'
      const stage: EditorStage = { key: nextKey, kind, name: '', lines: [{ key: nextKey + 1, ...blankLine }] }
      // What is made ahead stands before the dough that it goes into.
      const placed = kind === 'final_dough' ? [...stages, stage] : [stage, ...stages]
      return { stages: placed, nextKey: nextKey + 2, focus: { id: stageFieldId(nextKey, 'kind'), turn } }
    }
    case 'remove-stage': {
      const rest = stages.filter(({ key }) => key !== action.stage)
      const first = rest[0]
      return { ...state, stages: rest, focus: first ? { id: stageFieldId(first.key, 'kind'), turn } : null }
    }
    case 'move-stage':
      return {
        ...state,
        stages: moved(
          stages,
          stages.findIndex(({ key }) => key === action.stage),
          action.by,
        ),
        focus: { id: stageFieldId(action.stage, 'kind'), turn },
      }
    default:
      return action satisfies never
  }
}

function moveLine(stages: readonly EditorStage[], lineKey: number, by: -1 | 1): readonly EditorStage[] {
  const s = stages.findIndex((stage) => stage.lines.some(({ key }) => key === lineKey))
  const stage = stages[s]
  const line = stage?.lines.find(({ key }) => key === lineKey)
  if (!stage || !line) return stages
  const at = stage.lines.indexOf(line)
  if (stage.lines[at + by])
    return stages.map((each) => (each === stage ? { ...each, lines: moved(each.lines, at, by) } : each))
  const neighbour = stages[s + by]
  if (!neighbour) return stages
  return stages.map((each) => {
    if (each === stage) return { ...each, lines: each.lines.filter((other) => other !== line) }
    if (each === neighbour) return { ...each, lines: by === 1 ? [line, ...each.lines] : [...each.lines, line] }
    return each
  })
}

function moved<T>(list: readonly T[], at: number, by: -1 | 1): T[] {
  const swapped = [...list]
  const [here, there] = [list[at], list[at + by]]
  if (here === undefined || there === undefined) return swapped
  swapped[at] = there
  swapped[at + by] = here
  return swapped
}
