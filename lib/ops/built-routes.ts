import fs from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '..', '..')

/** Every route of the build by its address pattern, without the ones that Next itself brings. */
export function builtRoutes(): string[] {
  return Object.values(manifest()).filter((route) => !route.startsWith('/_'))
}

/** Address patterns of the build's pages for somebody who is signed in. */
export function builtDeskPages(): string[] {
  return Object.entries(manifest())
    .filter(([file]) => /^\/\(desk\)\/.*\/page$/.test(file))
    .map(([, route]) => route)
}

function manifest(): Record<string, string> {
  return JSON.parse(fs.readFileSync(path.join(root, '.next', 'app-path-routes-manifest.json'), 'utf8')) as Record<
    string,
    string
  >
}
