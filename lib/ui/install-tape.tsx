/** What kind of install a page belongs to, said on every page. */
export type InstallNotice = { text: string; kind: 'invented' | 'real' }

/** The striped edge of a page with invented data, so that it is never taken for a real one. Nothing on a real one. */
export function InstallTape({ kind }: { kind: InstallNotice['kind'] }) {
  return kind === 'invented' ? <div aria-hidden="true" className="tape" /> : null
}
