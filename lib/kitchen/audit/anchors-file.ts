import 'server-only'
import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import { readAnchorLine, textOfAnchor, type Anchor } from './anchor-line'

/** One line of the file, from 1, with what it says; null where that cannot be read. */
export type AnchorLine = { line: number; anchor: Anchor | null }

/**
 * The lines of the file of anchors in their order, none where there is no file yet. Blank ones are left out.
 * @throws Error of the file system where it is there and cannot be read
 */
export async function* readAnchors(file: string): AsyncGenerator<AnchorLine> {
  let line = 0
  for await (const text of linesOf(file)) {
    line += 1
    if (text.trim() !== '') yield { line, anchor: readAnchorLine(text) }
  }
}

/** By hand: Node's own reader of lines drops an error of the stream. */
async function* linesOf(file: string): AsyncGenerator<string> {
  let rest = ''
  try {
    for await (const piece of createReadStream(file, 'utf8') as AsyncIterable<string>) {
      const lines = (rest + piece).split('\n')
      rest = lines.pop() ?? ''
      yield* lines
    }
  } catch (error) {
    if (!isMissing(error)) throw error
  }
  yield rest
}

/**
 * Puts anchors at the end of the file, and returns when they are on the disk. What is there is never touched; a line that
 * was cut off stays one of its own.
 * @throws Error of the file system
 */
export async function appendAnchors(file: string, anchors: readonly Anchor[]): Promise<void> {
  if (anchors.length === 0) return
  const handle = await open(file, 'a+', 0o644)
  try {
    const { size } = await handle.stat()
    const end = size === 0 ? null : (await handle.read(Buffer.alloc(1), 0, 1, size - 1)).buffer.toString('latin1')
    const begin = end === null || end === '\n' ? '' : '\n'
    await handle.appendFile(begin + anchors.map((anchor) => `${textOfAnchor(anchor)}\n`).join(''))
    await handle.sync()
  } finally {
    await handle.close()
  }
}

function isMissing(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ENOENT'
}
