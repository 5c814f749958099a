import { describe, expect, it } from 'vitest'
import {
  editorStateOf,
  editorStep,
  lineFieldId,
  stageFieldId,
  type EditorAction,
  type EditorState,
} from '@/app/(desk)/formulas/editor-state'

const line = (ingredientId: string) => ({ ingredientId, ingredientName: ingredientId.toUpperCase(), pctFlour: '1' })
const start = () =>
  editorStateOf([
    { kind: 'pre_ferment', name: 'Poolish', lines: [line('a'), line('b')] },
    { kind: 'final_dough', name: '', lines: [line('c')] },
  ])
const shape = (state: EditorState) => state.stages.map((stage) => stage.lines.map(({ ingredientId }) => ingredientId))
const keyOf = (state: EditorState, ingredientId: string) =>
  state.stages.flatMap((stage) => stage.lines).find((each) => each.ingredientId === ingredientId)?.key ?? -1
const after = (...actions: ((state: EditorState) => EditorAction)[]) =>
  actions.reduce((state, of) => editorStep(state, of(state)), start())

describe('writing a formula', () => {
  it('moves a line within its stage, past its edge into the next, and no further', () => {
    const move =
      (which: string, by: -1 | 1) =>
      (state: EditorState): EditorAction => ({ do: 'move-line', line: keyOf(state, which), by, focus: 'x' })
    expect(shape(after(move('a', 1)))).toEqual([['b', 'a'], ['c']])
    expect(shape(after(move('b', 1)))).toEqual([['a'], ['b', 'c']])
    expect(shape(after(move('c', -1)))).toEqual([['a', 'b', 'c'], []])
    expect(shape(after(move('a', -1)))).toEqual([['a', 'b'], ['c']])
    expect(shape(after(move('c', 1)))).toEqual([['a', 'b'], ['c']])
  })

  it('adds a line below another one and takes the focus there', () => {
    const state = after((now) => ({ do: 'add-line', stage: now.stages[0]?.key ?? -1, after: keyOf(now, 'a') }))
    expect(shape(state)).toEqual([['a', '', 'b'], ['c']])
    expect(state.focus?.id).toBe(lineFieldId(keyOf(state, ''), 'ingredientId'))
    expect(shape(after((now) => ({ do: 'add-line', stage: now.stages[0]?.key ?? -1 })))).toEqual([
      ['a', 'b', ''],
      ['c'],
    ])
  })

  it('takes the focus to a neighbour when a line goes, and keeps the keys of the others', () => {
    const before = start()
    const state = editorStep(before, { do: 'remove-line', line: keyOf(before, 'a') })
    expect(shape(state)).toEqual([['b'], ['c']])
    expect(state.focus?.id).toBe(lineFieldId(keyOf(before, 'b'), 'ingredientId'))
    expect(editorStep(state, { do: 'remove-line', line: keyOf(before, 'c') }).focus?.id).toBe(
      lineFieldId(keyOf(before, 'b'), 'ingredientId'),
    )
  })

  it('puts what is made ahead before the dough, moves and removes stages', () => {
    const added = after(() => ({ do: 'add-stage' }))
    expect(added.stages.map(({ kind }) => kind)).toEqual(['pre_ferment', 'pre_ferment', 'final_dough'])
    expect(new Set(added.stages.flatMap((stage) => [stage.key, ...stage.lines.map(({ key }) => key)])).size).toBe(7)
    const dough = start().stages[1]?.key ?? -1
    expect(after(() => ({ do: 'move-stage', stage: dough, by: -1 })).stages.map(({ kind }) => kind)).toEqual([
      'final_dough',
      'pre_ferment',
    ])
    const left = after(() => ({ do: 'remove-stage', stage: dough }))
    expect(left.focus?.id).toBe(stageFieldId(left.stages[0]?.key ?? -1, 'kind'))
    expect(editorStep(left, { do: 'add-stage' }).stages.map(({ kind }) => kind)).toEqual(['pre_ferment', 'final_dough'])
  })

  it('names ingredients as they are called now, and leaves a name that was typed and is nobody’s', () => {
    const before = editorStep(
      after((now) => ({ do: 'change-line', line: keyOf(now, 'c'), to: { ingredientId: '', ingredientName: 'hony' } })),
      { do: 'name-ingredients', names: new Map([['b', 'Barley flour']]) },
    )
    expect(before.stages.flatMap(({ lines }) => lines.map(({ ingredientName }) => ingredientName))).toEqual([
      'A',
      'Barley flour',
      'hony',
    ])
  })

  it('changes what is typed and nothing else', () => {
    const before = start()
    const state = editorStep(before, { do: 'change-line', line: keyOf(before, 'b'), to: { pctFlour: '25' } })
    expect(state.stages[0]?.lines[1]).toMatchObject({ ingredientId: 'b', pctFlour: '25' })
    expect(state.stages[1]).toEqual(before.stages[1])
    expect(
      editorStep(before, { do: 'change-stage', stage: before.stages[1]?.key ?? -1, to: { name: 'Dough' } }).stages[1]
        ?.name,
    ).toBe('Dough')
  })
})
