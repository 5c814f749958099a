const shared =
  'min-h-14 rounded-none border-2 border-line bg-sheet px-3 py-2 text-lead text-ink aria-invalid:border-stop [&:is(input,textarea):read-only]:bg-band disabled:bg-band'

/** The classes of what is typed or chosen on the floor: 56 px high, large figures. */
export function floorControlClass(width: 'number' | 'unit' | 'line'): string {
  return `${shared} ${widths[width]}`
}

const widths = { number: 'w-full min-w-[6rem]', unit: 'shrink-0', line: 'w-full max-w-column' } as const
