import { createHash } from 'node:crypto'
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
  if (await answers(address)) return 'taken'
  fs.rmSync(address, { force: true })
  return new Promise((resolve, reject) => {
    const server = net.createServer((socket) => socket.end())
    server.on('error', (error: NodeJS.ErrnoException) => (error.code === 'EADDRINUSE' ? resolve('taken') : reject(error)))
    server.listen(address, () => {
      server.unref()
      resolve(() => server.close())
    })
  })
}

function answers(address: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = net.connect(address)
    socket.on('connect', () => {
      socket.destroy()
      resolve(true)
    })
    socket.on('error', () => resolve(false))
  })
}
