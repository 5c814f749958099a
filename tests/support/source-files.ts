import fs from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '..', '..')
const generated = 'lib/db/generated/'

/** TypeScript files of ours in a folder, however deep, by their path from the root. None when the folder is not there yet. */
export function sourceFilesIn(folder: string): string[] {
  const at = path.join(root, folder)
  if (!fs.existsSync(at)) return []
  return fs
    .readdirSync(at, { recursive: true, encoding: 'utf8' })
    .map((file) => path.posix.join(folder, file.split(path.sep).join('/')))
    .filter((file) => /\.tsx?$/.test(file) && !file.startsWith(generated))
    .sort()
}

export function isThere(file: string): boolean {
  return fs.existsSync(path.join(root, file))
}

export function textOf(file: string): string {
  return fs.readFileSync(path.join(root, file), 'utf8')
}

/** What a file imports at run time (not only as types), with relative paths written from the root and without ending. */
export function importsOf(file: string): string[] {
  const found = [...textOf(file).matchAll(/^(?:import|export)\s+(type\s+)?(?:[^'";]*?\sfrom\s+)?'([^']+)'/gm)]
  return found
    .filter(([whole, typeOnly]) => !typeOnly && !hasOnlyTypes(whole))
    .map(([, , wanted = '']) => {
      if (wanted.startsWith('@/')) return wanted.slice(2)
      return wanted.startsWith('.') ? path.posix.join(path.posix.dirname(file), wanted) : wanted
    })
}

/** `import { type A, type B } from …` leaves nothing behind either. */
function hasOnlyTypes(statement: string): boolean {
  const names = /\{([^}]*)\}/
    .exec(statement)?.[1]
    ?.split(',')
    .map((name) => name.trim())
    .filter(Boolean)
  return names !== undefined && /^import\s*\{/.test(statement) && names.every((name) => name.startsWith('type '))
}
