import net from 'node:net'

export type Gate = {
  port: number
  /** Connections that were made through it so far. */
  connections(): number
  /** Cuts every connection and takes no new one. */
  shut(): Promise<void>
  /** Holds everything back: connections stay, and nothing comes through. */
  freeze(): void
  /** Lets everything through again. */
  open(): Promise<void>
  close(): Promise<void>
}

/** A way to a port on this machine that can be shut and opened again, to see what somebody does when it is away. */
export async function openGate(to: number): Promise<Gate> {
  const pairs = new Set<readonly [net.Socket, net.Socket]>()
  let made = 0
  let frozen = false
  const server = net.createServer((near) => {
    made++
    const far = net.connect({ host: '127.0.0.1', port: to })
    const pair = [near, far] as const
    pairs.add(pair)
    for (const [from, other] of [pair, [far, near] as const]) {
      from.on('error', () => undefined)
      from.on('data', (chunk) => other.write(chunk))
      from.on('close', () => {
        pairs.delete(pair)
        other.destroy()
      })
      if (frozen) from.pause()
    }
  })
  const listen = (port: number) => new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
  await listen(0)
  const { port } = server.address() as net.AddressInfo
  const shut = async () => {
    if (!server.listening) return
    const closed = new Promise((resolve) => server.close(resolve))
    for (const [near, far] of pairs) {
      near.destroy()
      far.destroy()
    }
    await closed
  }
  return {
    port,
    connections: () => made,
    shut,
    freeze() {
      frozen = true
      for (const pair of pairs) for (const socket of pair) socket.pause()
    },
    async open() {
      frozen = false
      for (const pair of pairs) for (const socket of pair) socket.resume()
      if (!server.listening) await listen(port)
    },
    close: shut,
  }
}
