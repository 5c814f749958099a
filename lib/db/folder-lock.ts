import { createHash, randomUUID } from 'node:crypto'
import fs from 'node:fs'
import net from 'node:net'
import os from 'node:os'
import path from 'node:path'

/**
 * Takes a data folder for this process alone. The lock is a listening socket, which the system closes with the
 * process however it ends, so nothing stale can lock anybody out.
 * @returns a function that gives the lock back; or 'taken' when another process holds it
 */
export async function lockFolder(folder: string): Promise<(() => void) | 'taken'> {
  const key = createHash('sha256').update(fs.realpathSync(folder)).digest('hex').slice(0, 24)
  const address = path.join(os.tmpdir(), `evendough-${key}.lock`)
  if ((await nameOfHolder(address)) !== null) return 'taken'
  // Left by a process that is gone: the system closes a socket with its process, but not the file.
  fs.rmSync(address, { force: true })
  const name = randomUUID()
  const server = net.createServer((socket) => socket.end(name))
  const listening = await new Promise<boolean>((resolve, reject) => {
    server.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(false)
      else reject(error)
    })
    server.listen(address, () => {
      resolve(true)
    })
  })
  // Of two that removed the same left-over at once, one has removed the other's new file: who answers there holds it.
  if (!listening || (await nameOfHolder(address)) !== name) {
    server.close()
    return 'taken'
  }
  server.unref()
  return () => server.close()
}

/** What the holder of a lock answers, or null when nobody does. */
function nameOfHolder(address: string): Promise<string | null> {
  return new Promise((resolve) => {
    let name = ''
    const socket = net.connect(address)
    socket.setEncoding('utf8')
    socket.on('data', (chunk: string) => (name += chunk))
    socket.on('end', () => resolve(name))
    socket.on('error', () => resolve(null))
  })
}
