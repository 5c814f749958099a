import http from 'node:http'
import { constants, type Http2ServerRequest, type Http2ServerResponse } from 'node:http2'
import { headersToApp, headersToBrowser } from './front-headers'
import { mostBodyBytes, requestFault, type FrontPlace, type OwnAnswer } from './request-fault'

export type FrontRequest = http.IncomingMessage | Http2ServerRequest
export type FrontResponse = http.ServerResponse | Http2ServerResponse

export type Upstream = {
  place: FrontPlace
  /** Port of the app on 127.0.0.1. */
  appPort: number
  /** What the app knows the front by. */
  secret: string
  /** How long a request may take to come in. */
  longestBodyMs: number
  sentences: Readonly<Record<Exclude<OwnAnswer['status'], 307>, string>>
}

// A connection for each request: on one that is shared, what the two sides read differently would become the next one's.
const agent = new http.Agent({ keepAlive: false })

/** Hands a request on to the app and its answer back, piece by piece as they come. */
export function forward(request: FrontRequest, response: FrontResponse, upstream: Upstream): void {
  const { method = 'GET', url: path = '/' } = request
  const authority = 'authority' in request ? request.authority : undefined
  // Whoever reads no further would never learn that the connection broke.
  request.on('error', () => undefined)
  const fault = requestFault({ method, path, rawHeaders: request.rawHeaders, authority }, upstream.place)
  if (fault) {
    answer(request, response, fault, upstream)
    return
  }
  let sent: http.ClientRequest
  try {
    sent = http.request({
      host: '127.0.0.1',
      port: upstream.appPort,
      agent,
      method,
      path,
      headers: headersToApp(request.rawHeaders, {
        host: upstream.place.host,
        address: request.socket.remoteAddress ?? 'unknown',
        secret: upstream.secret,
      }),
      setHost: false,
    })
  } catch {
    // A header that cannot be written as it was read.
    answer(request, response, { status: 400 }, upstream)
    return
  }
  let isOver = false
  const giveUp = (status: 408 | 413 | 502) => {
    if (isOver) return
    isOver = true
    answer(request, response, { status }, upstream)
    sent.destroy()
  }
  sent.on('response', (got) => {
    if (isOver) got.destroy()
    else handBack(got, request, response)
  })
  sent.on('error', () => giveUp(502))
  // Whoever left needs no answer, and the app need not work on.
  response.on('close', () => {
    isOver = true
    sent.destroy()
  })
  handOn(request, sent, upstream.longestBodyMs, giveUp)
}

function handOn(
  request: FrontRequest,
  sent: http.ClientRequest,
  longestMs: number,
  giveUp: (status: 408 | 413) => void,
): void {
  let taken = 0
  const late = setTimeout(() => giveUp(408), longestMs)
  sent.on('drain', () => request.resume())
  sent.on('close', () => {
    clearTimeout(late)
    // What is still to come is read and thrown away, so that the connection can go on.
    request.resume()
  })
  request.on('data', (chunk: Buffer) => {
    taken += chunk.length
    if (taken > mostBodyBytes) giveUp(413)
    else if (!sent.destroyed && !sent.write(chunk)) request.pause()
  })
  request.on('end', () => {
    clearTimeout(late)
    sent.end()
  })
}

function handBack(got: http.IncomingMessage, request: FrontRequest, response: FrontResponse): void {
  response.writeHead(got.statusCode ?? 502, headersToBrowser(got.rawHeaders))
  // The browser hears at once that an answer has begun, also where its first piece takes its time. HTTP/2 does so anyway.
  if (!('stream' in response)) response.flushHeaders()
  got.on('error', () => breakOff(request, response))
  got.pipe(response)
}

/** The front's own answer, or an end in the middle of one that has begun. */
function answer(request: FrontRequest, response: FrontResponse, own: OwnAnswer, { sentences }: Upstream): void {
  if (response.headersSent) {
    breakOff(request, response)
    return
  }
  const stream = 'stream' in response ? response.stream : undefined
  response.writeHead(own.status, {
    'content-type': 'text/plain; charset=utf-8',
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
    ...(own.status === 307 ? { location: own.location } : {}),
    ...(stream ? {} : { connection: 'close' }),
  })
  // What is still to come of the request is not read.
  response.end(own.status === 307 ? '' : `${sentences[own.status]}\n`, () => stream?.close(constants.NGHTTP2_NO_ERROR))
}

function breakOff(request: FrontRequest, response: FrontResponse): void {
  if ('stream' in response) response.stream.close(constants.NGHTTP2_INTERNAL_ERROR)
  else request.socket.destroy()
}
