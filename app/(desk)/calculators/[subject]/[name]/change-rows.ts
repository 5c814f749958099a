import { rowCount, type Typed } from './typed'

/** The name of the buttons that add and remove rows; no field is called so. */
export const rowStep = 'row-step'

/**
 * The form after one of its row buttons was pressed: `add:lines` gives the table a row more, `remove:lines:2` takes
 * its third row out and moves up those below.
 * @returns undefined when none was pressed
 */
export function changeRows(typed: Typed): Typed | undefined {
  const { [rowStep]: pressed, ...rest } = typed
  const [step, table = '', row] = pressed?.[0]?.split(':') ?? []
  // The first row stands there before anything is typed in it.
  if (step === 'add') return { ...rest, [`${table}.${Math.max(1, rowCount(rest, table))}`]: [''] }
  return step === 'remove' ? withoutRow(rest, `${table}.`, Number(row)) : undefined
}

function withoutRow(typed: Typed, start: string, row: number): Typed {
  return Object.fromEntries(
    Object.entries(typed).flatMap(([name, texts]) => {
      if (!name.startsWith(start)) return [[name, texts]]
      const [number, ...field] = name.slice(start.length).split('.')
      const at = Number(number)
      return at === row ? [] : [[`${start}${[at > row ? at - 1 : at, ...field].join('.')}`, texts]]
    }),
  )
}
