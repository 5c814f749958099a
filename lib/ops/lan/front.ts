import http2 from 'node:http2'
import type { Socket } from 'node:net'
import { forward, type FrontRequest, type FrontResponse, type Upstream } from './forward'
import type { ServerCertificate } from './server-certificate'

export type Front = {
  /** Shows another certificate to whoever connects from now on. */
  show(certificate: ServerCertificate): void
  /** Takes no further connections, lets running answers end, and after a grace ends them. */
  close(): Promise<void>
}

/** As the app's own server (lib/ops/serve.ts): an address may hold the whole question of a calculation. */
const mostHeaderBytes = 262_144
/** How long a client may take, in ms. */
export type Patience = {
  /** To agree on TLS. */
  handshakeMs: number
  /** To say the headers, in HTTP/1.1. In HTTP/2 they come whole or the connection is idle. */
  headersMs: number
  /** To send a body. */
  bodyMs: number
  /** With nothing moving on its connection. */
  idleMs: number
}

const patience: Patience = { handshakeMs: 10_000, headersMs: 10_000, bodyMs: 60_000, idleMs: 180_000 }
const mostConnections = 256
const closeGraceMs = 2_000

/**
 * https before the app, on one address of this machine: HTTP/2, and HTTP/1.1 for what does not speak that.
 * @throws Error with the code of the fault when it cannot listen there
 */
export async function openFront(
  at: { address: string; port: number },
  certificate: ServerCertificate,
  upstream: Omit<Upstream, 'longestBodyMs'>,
  { handshakeMs, headersMs, bodyMs, idleMs } = patience,
): Promise<Front> {
  const server = http2.createSecureServer({
    allowHTTP1: true,
    cert: certificate.chain,
    key: certificate.key,
    minVersion: 'TLSv1.2',
    handshakeTimeout: handshakeMs,
    noDelay: true,
    settings: { maxConcurrentStreams: 100, maxHeaderListSize: mostHeaderBytes },
  })
  // What Node's plain server takes as options, this one takes as properties.
  Object.assign(server, {
    maxHeaderSize: mostHeaderBytes,
    headersTimeout: headersMs,
    requestTimeout: headersMs + bodyMs,
    connectionsCheckingInterval: headersMs / 2,
    keepAliveTimeout: 10_000,
    maxConnections: mostConnections,
  })
  server.setTimeout(idleMs)
  server.on('request', (request: FrontRequest, response: FrontResponse) =>
    forward(request, response, { ...upstream, longestBodyMs: bodyMs }),
  )
  const sockets = new Set<Socket>()
  server.on('connection', (socket: Socket) => {
    sockets.add(socket)
    socket.on('close', () => sockets.delete(socket))
  })
  const sessions = new Set<http2.ServerHttp2Session>()
  server.on('session', (session) => {
    sessions.add(session)
    session.on('close', () => sessions.delete(session))
  })
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(at.port, at.address, () => resolve())
  })
  return {
    show: ({ chain, key }) => server.setSecureContext({ cert: chain, key, minVersion: 'TLSv1.2' }),
    close: () =>
      new Promise((resolve) => {
        const late = setTimeout(() => {
          for (const socket of sockets) socket.destroy()
        }, closeGraceMs)
        server.close(() => {
          clearTimeout(late)
          resolve()
        })
        for (const session of sessions) session.close()
      }),
  }
}
