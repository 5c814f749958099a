import { spawn } from 'node:child_process'
import { once } from 'node:events'
import net from 'node:net'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect, test } from 'vitest'

const preload = pathToFileURL(path.resolve(import.meta.dirname, '../../../lib/ops/leave-with-parent.mjs')).href

/** A child that holds a connection to us for as long as it lives. */
const childProgram = (port: number) => `require('node:net').connect(${port}, '127.0.0.1')`
const parentProgram = (port: number) => `
  require('node:child_process').spawn(process.execPath, ['--import', ${JSON.stringify(preload)}, '-e', ${JSON.stringify(childProgram(port))}],
    { stdio: ['ignore', 'ignore', 'ignore', 'ipc'] })`

test('a child ends when its parent is killed without a chance to say so', async () => {
  const server = net.createServer()
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as net.AddressInfo
  const parent = spawn(process.execPath, ['-e', parentProgram(port)], { stdio: 'ignore' })
  const [socket] = (await once(server, 'connection')) as [net.Socket]
  // The connection breaks off when the child ends; how is no matter.
  socket.on('error', () => undefined).resume()
  parent.kill('SIGKILL')
  await once(socket, 'close')
  expect(socket.closed).toBe(true)
  server.close()
})

test('a child that is done ends although its parent lives on', async () => {
  const child = spawn(process.execPath, ['--import', preload, '-e', ''], {
    stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
  })
  const [status] = (await once(child, 'exit')) as [number]
  expect(status).toBe(0)
})

test("a program's own workers do not inherit it", async () => {
  const child = spawn(process.execPath, ['--import', preload, '-p', 'process.execArgv.join()'], {
    stdio: ['ignore', 'pipe', 'ignore', 'ipc'],
  })
  let said = ''
  child.stdout?.on('data', (chunk: Buffer) => (said += chunk.toString()))
  await once(child, 'close')
  expect(said).not.toContain('leave-with-parent')
})
