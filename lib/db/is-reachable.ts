import net from 'node:net'

const longestMs = 2_000

/** Whether somebody listens at an address: a database that was stopped or killed does not, and that shows at once. */
export function isReachable(host: string, port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = net.connect({ host, port, timeout: longestMs })
    const answer = (reachable: boolean) => {
      socket.destroy()
      resolve(reachable)
    }
    socket.on('connect', () => answer(true))
    socket.on('timeout', () => answer(false))
    socket.on('error', () => answer(false))
  })
}
