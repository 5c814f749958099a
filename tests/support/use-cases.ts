import fs from 'node:fs'
import path from 'node:path'
import type { Command } from '../../lib/kitchen/command'
import type { OpenCommand } from '../../lib/kitchen/open-command'
import type { OpenQuery } from '../../lib/kitchen/open-query'
import type { Query } from '../../lib/kitchen/query'

type UseCase = Command | Query | OpenCommand | OpenQuery

/** Every command and query in lib/kitchen, by loading each file. */
export async function useCasesOnDisk(): Promise<UseCase[]> {
  const kitchen = path.resolve(import.meta.dirname, '..', '..', 'lib', 'kitchen')
  const found: UseCase[] = []
  for (const subject of fs.readdirSync(kitchen, { withFileTypes: true })) {
    if (!subject.isDirectory()) continue
    // A room may have a room within.
    for (const file of fs.readdirSync(path.join(kitchen, subject.name), { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts') || file.endsWith('.input.ts')) continue
      const module = (await import(path.join(kitchen, subject.name, file))) as Record<string, unknown>
      found.push(...Object.values(module).filter(isUseCase))
    }
  }
  return found
}

function isUseCase(value: unknown): value is UseCase {
  const kinds = ['command', 'query', 'open-command', 'open-query']
  return typeof value === 'object' && value !== null && 'kind' in value && kinds.includes(String(value.kind))
}
