import http from 'node:http'
import type { TrustAnswer } from './trust-page'

/**
 * The one thing that is served without https, because whoever needs it has no https yet. It reads no body and no header,
 * and sets no cookie.
 * @throws Error with the code of the fault when it cannot listen there
 */
export async function openTrustListener(
  at: { address: string; port: number },
  answerTo: (method: string, path: string) => TrustAnswer,
): Promise<{ close(): Promise<void> }> {
  const server = http.createServer(
    {
      maxHeaderSize: 8_192,
      headersTimeout: 5_000,
      requestTimeout: 5_000,
      connectionsCheckingInterval: 2_500,
      keepAlive: false,
    },
    (request, response) => {
      const { status, headers, body } = answerTo(request.method ?? '', request.url ?? '/')
      response.writeHead(status, {
        ...headers,
        'Content-Length': Buffer.byteLength(body),
        Connection: 'close',
      })
      response.end(request.method === 'HEAD' ? undefined : body)
    },
  )
  server.maxConnections = 64
  server.setTimeout(15_000)
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject)
    server.listen(at.port, at.address, () => resolve())
  })
  return {
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve())
        server.closeAllConnections()
      }),
  }
}
