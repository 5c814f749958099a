import { randomUUID } from 'node:crypto'
import fs from 'node:fs'
import net from 'node:net'
import path from 'node:path'

/** The system's own limit is 104 (macOS) or 108 bytes (Linux), the closing NUL among them; Node cuts off silently. */
const longestSocketPath = 103

/**
 * Takes a data folder for this process alone. The lock is a listening socket, which the system closes with the
 * process however it ends, so nothing stale can lock anybody out. It lies in the folder itself: whoever comes to the
 * folder meets it, whatever their TMPDIR.
 * @returns a function that gives the lock back; or 'taken' when another process holds it
 * @throws Error in words when the folder's path is too long for a socket
 */
export async function lockFolder(folder: string): Promise<(() => void) | 'taken'> {
  const address = path.join(fs.realpathSync(folder), 'start.lock')
  if (Buffer.byteLength(address) > longestSocketPath)
    throw new Error(`The path ${folder} is too long for the lock in it. Choose a shorter one: EVENDOUGH_DATA=…`)
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
