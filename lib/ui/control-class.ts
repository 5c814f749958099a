export type ControlWidth = 'short' | 'medium' | 'full'

const widths: Record<ControlWidth, string> = { short: 'max-w-short', medium: 'max-w-medium', full: 'max-w-column' }

const shared =
  'w-full min-h-10 rounded-none border border-line border-b-2 border-b-ink bg-sheet px-2.5 py-1.5 text-control text-ink aria-invalid:border-2 aria-invalid:border-stop disabled:bg-band'

/** The classes that every typed or chosen control shares. */
export function controlClass(width: ControlWidth): string {
  return `${shared} ${widths[width]}`
}
